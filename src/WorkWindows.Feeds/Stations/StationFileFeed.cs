using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// Station files that lie on a server, in any form that names its units: docs/feeds/ghcn-daily.md and
/// docs/feeds/plain-csv.md.
/// </summary>
/// <param name="key">The feed's name.</param>
/// <param name="template">The address, with <c>{station}</c> for the station's id; empty where there is none.</param>
/// <param name="http">Asks.</param>
public sealed class StationFileFeed(string key, string template, FeedHttp http) : IDailyFeed
{
    public const string Ghcn = "ghcn-daily";
    public const string Plain = "plain-csv";

    /// <summary>Servers of files know them by their ending at best.</summary>
    private static readonly string[] Types =
    [
        "text/csv", "text/plain", "application/csv", "application/gzip", "application/x-gzip",
        "application/octet-stream",
    ];

    public string Key => key;

    public FeedKind Kind => FeedKind.Observations;

    public bool Serves(FeedPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.GhcnId is not null && template.Length > 0;
    }

    public async Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        var station = request.Place.StationOf(this);
        var address = new Uri(template.Replace("{station}", station, StringComparison.Ordinal));
        var body = await http.GetAsync(address, Types, request.Before, cancellationToken);
        if (body.Bytes is not { } bytes)
            return new DailyFeedReply.NotModified(body.Validators, body.FreshUntil);
        var import = StationFile.Read(bytes, new(station));
        if (!import.IsAccepted)
            throw new FeedFormatException($"The station file cannot be used. {import.Faults}");
        if (import.Station.StationId != station)
            throw new FeedFormatException($"The file is of station {import.Station.StationId} and not of {station}.");
        return new DailyFeedReply.Observed(
            [.. import.Station.Readings.Where(reading => request.Days.Contains(reading.Date))],
            FaultReport.None, body.Validators, body.FreshUntil);
    }
}
