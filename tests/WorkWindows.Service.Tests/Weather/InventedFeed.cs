using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>A feed of observations that answers what a test says.</summary>
internal sealed class InventedFeed : IDailyFeed
{
    public const string Setting = "Feeds:Observations";

    public string Key => "invented";

    public FeedKind Kind => FeedKind.Observations;

    public List<DailyFeedRequest> Requests { get; } = [];

    /// <summary>The readings of a station, or the fault of asking for it.</summary>
    public Func<string, IEnumerable<DailyReading>> Answer { get; set; } = _ => [];

    public bool Serves(FeedPlace place) => place.GhcnId is not null;

    public Task<DailyFeedReply> FetchAsync(DailyFeedRequest request, CancellationToken cancellationToken)
    {
        Requests.Add(request);
        ImmutableArray<DailyReading> readings = [.. Answer(request.Place.GhcnId!)];
        return Task.FromResult<DailyFeedReply>(
            new DailyFeedReply.Observed(readings, FaultReport.None, FeedValidators.None, null));
    }
}
