using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

/// <summary>Tells an organization's consultants, once, that weather has stopped coming.</summary>
public sealed partial class OutageWatch(
    WorkWindowsDb db, CurrentOrganization current, PromptLook look, IBackgroundJobClient jobs,
    IOptions<MailOptions> mail, IClock clock, ILogger<OutageWatch> logger)
{
    /// <summary>
    /// Writes one mail a consultant of all that has gone out among the feeds since they were told last. Where nobody
    /// has a mail address, nobody was told, and the next round tries again.
    /// </summary>
    /// <param name="feeds">What was just asked for: a feed that nobody asks has not stopped.</param>
    /// <param name="cancellation">Ends the queries; nothing is written then.</param>
    /// <remarks>
    /// Each outage is looked at once, whether or not someone could be told: the days that need the weather are unknown
    /// in any case.
    /// </remarks>
    public async Task TellAsync(
        IReadOnlyCollection<WeatherFeed> feeds, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, current, cancellation);
        var now = clock.GetCurrentInstant();
        var stopped = (await StoppedAsync(feeds, cancellation)).FindAll(feed => feed.State.IsOut(now));
        if (stopped.Count == 0)
            return;
        var unseen = stopped.FindAll(feed => feed.State.OutSeenAt is null);
        foreach (var feed in unseen)
            feed.State.OutSeenAt = now;
        var stations = unseen.Select(feed => feed.State.StationId).Distinct().ToList();
        look.Note(stopped[0].State.Feed == WeatherFeed.Observations
            ? WeatherChange.OfRecords(stations)
            : WeatherChange.OfOutlooks(stations));
        var isTold = await WriteAsync(stopped.FindAll(feed => feed.State.ToldAt is null), now, cancellation);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        var id = current.Id!.Value;
        if (isTold)
            jobs.Enqueue<OutboxJob>(job => job.SendAsync(id, CancellationToken.None));
    }

    /// <returns>Whether there was someone to write to, and something to tell.</returns>
    private async Task<bool> WriteAsync(List<StoppedFeed> untold, Instant now, CancellationToken cancellation)
    {
        if (untold.Count == 0)
            return false;
        var organization = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        var zone = DateTimeZoneProviders.Tzdb[organization.TimeZone];
        var people = await Recipients.ReadAsync(db, zone, cancellation);
        var told = people.Values.Where(person => person.IsConsultant).OrderBy(person => person.Id)
            .SelectMany(Ways).ToList();
        if (told.Count == 0)
        {
            LogNobody(untold.Count);
            return false;
        }
        // Rounds of different feeds may tell in the same moment.
        var key = $"outage:{string.Join('+', untold.Select(feed => feed.State.Feed).Distinct().Order())}"
            + $":{InstantPattern.ExtendedIso.Format(now)}";
        var notice = OutageNotice.Of(new(organization.Name, organization.PostalAddress), zone, untold);
        db.Messages.AddRange(told.Select(one => Message.Of(
            new($"{key}:{one.Person.Id}", NoticeKinds.Outage, one.Person, notice, Calendar: null) { Channel = one.Way },
            now, mail.Value, calendar: null)));
        foreach (var feed in untold)
            feed.State.ToldAt = now;
        return true;
    }

    private static IEnumerable<(Recipient Person, NoticeChannels Way)> Ways(Recipient person)
    {
        var ways = person.Wishes.Ways(NoticeKinds.Find(NoticeKinds.Outage)!);
        if (ways.HasFlag(NoticeChannels.Mail) && person.Address is not null)
            yield return (person, NoticeChannels.Mail);
        if (ways.HasFlag(NoticeChannels.Webhook))
            yield return (person, NoticeChannels.Webhook);
    }

    /// <summary>
    /// Of a parcel's own stations: one that is only blended in may be silent and leaves no day unknown, and one that no
    /// parcel uses any more is not asked.
    /// </summary>
    private async Task<List<StoppedFeed>> StoppedAsync(
        IReadOnlyCollection<WeatherFeed> feeds, CancellationToken cancellation)
    {
        var used = db.ParcelStations.Where(link => link.Purpose == StationPurpose.Temperature);
        var rows = await db.FeedStates
            .Where(state => feeds.Contains(state.Feed) && (state.ToldAt == null || state.OutSeenAt == null)
                && (state.Feed == WeatherFeed.Observations
                    ? db.ParcelStations.Any(link => link.StationId == state.StationId)
                    : used.Any(link => link.StationId == state.StationId)))
            .Join(db.Stations, state => state.StationId, station => station.Id,
                (state, station) => new { State = state, station.Name, station.GhcnId })
            .OrderBy(row => row.GhcnId).ToListAsync(cancellation);
        return rows.ConvertAll(row => new StoppedFeed(row.State, $"{row.Name} ({row.GhcnId})"));
    }

    [LoggerMessage(LogLevel.Warning, "{Count} feeds have stopped, and no consultant has a mail address to be told")]
    private partial void LogNobody(int count);
}

/// <summary>A feed that gave nothing usable for longer than its values last.</summary>
/// <param name="State">How it goes with it.</param>
/// <param name="Station">The station's name and id.</param>
public sealed record StoppedFeed(FeedState State, string Station);
