using NodaTime;
using WorkWindows.Service.Notices.Templates;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

/// <summary>Which weather has stopped coming, since when, what that means for the days, and what can be done.</summary>
internal static class OutageNotice
{
    private const int MostStations = 20;

    /// <param name="sender">Who speaks.</param>
    /// <param name="zone">The organization's zone, in which times are told.</param>
    /// <param name="stopped">At least one.</param>
    public static Notice Of(Sender sender, DateTimeZone zone, IReadOnlyCollection<StoppedFeed> stopped)
    {
        var feeds = stopped.GroupBy(feed => feed.State.Feed).OrderBy(feed => feed.Key).ToList();
        var titles = feeds.ConvertAll(feed => Title(feed.Key).ToLowerInvariant());
        var stations = stopped.Select(feed => feed.Station).Distinct().ToList();
        return NoticeTemplates.Fill("outage", new
        {
            What = titles.Count == 1 ? titles[0] : $"{string.Join(", ", titles.SkipLast(1))} and {titles[^1]}",
            Stations = stations.Count == 1 ? stations[0] : $"{stations.Count} stations",
            Feeds = feeds.Select(feed => new
            {
                Title = Title(feed.Key),
                Stations = Stations([.. feed], zone).ToArray(),
                Meaning = Meaning(feed.Key),
            }).ToArray(),
            Remedies = feeds.SelectMany(feed => Remedies(feed.Key)).Distinct().ToArray(),
            Sender = sender,
        });
    }

    private static IEnumerable<string> Stations(List<StoppedFeed> stopped, DateTimeZone zone)
    {
        foreach (var one in stopped.Take(MostStations))
            yield return $"{one.Station}: {Since(one.State, zone)} {Failure(one.State, zone)}";
        if (stopped.Count > MostStations)
            yield return $"And {stopped.Count - MostStations} more stations.";
    }

    private static string Title(WeatherFeed feed) => feed switch
    {
        WeatherFeed.Observations => "Station readings",
        WeatherFeed.Forecasts => "Forecasts",
        WeatherFeed.Alerts => "Weather alerts",
    };

    private static string Since(FeedState state, DateTimeZone zone) => state switch
    {
        { NewestAt: null } => $"none has come since it was first asked for, {MailDays.Of(state.FirstAttemptAt, zone)}.",
        // The day itself, in whichever zone it was.
        { Feed: WeatherFeed.Observations, NewestAt: { } newest } =>
            $"the last reading is of {MailDays.Of(newest.InUtc().Date.PlusDays(-1))}.",
        { Feed: WeatherFeed.Forecasts, NewestAt: { } newest } =>
            $"the last forecast was issued {MailDays.Of(newest, zone)}.",
        { Feed: WeatherFeed.Alerts, NewestAt: { } newest } => $"the last answer came {MailDays.Of(newest, zone)}.",
    };

    private static string Failure(FeedState state, DateTimeZone zone) => state.LastError is { } error
        ? $"The last attempt, {MailDays.Of(state.LastAttemptAt, zone)}, failed: {error.TrimEnd('.')}."
        : "The service answers, with nothing newer.";

    private static string Meaning(WeatherFeed feed) => feed switch
    {
        WeatherFeed.Observations =>
            $"For {WeatherRecords.LongestObservationAge.Days} days what was last forecast for a day stands in for its "
            + "reading. That time is over: days after the last reading that no other station near by fills are "
            + "missing, one by one, and with them runs of days and sums such as degree-days. Rules that need those "
            + "leave the days to come unknown.",
        WeatherFeed.Forecasts =>
            $"A forecast older than {WeatherRecords.LongestUsableAge.TotalHours} hours is not used. Rules that need it "
            + "leave today and the days to come unknown. Days that were announced are withdrawn.",
        WeatherFeed.Alerts =>
            $"After {WeatherRecords.LongestAlertAge.TotalHours} hours without an answer nobody knows which alerts are "
            + "in force. Rules about alerts leave today and the six days after it unknown. Days that were announced "
            + "are withdrawn.",
    };

    private static IEnumerable<string> Remedies(WeatherFeed feed)
    {
        if (feed == WeatherFeed.Observations)
        {
            yield return "Import the station's file by hand, or choose another station for its parcels, if this one "
                + "has stopped for good.";
        }
        else
        {
            yield return "Before anyone works on such a day, ask the weather service yourself and judge on the spot.";
        }
        yield return "See whether the machine that runs WorkWindows reaches the service, and what its log says of the "
            + "stations.";
    }
}
