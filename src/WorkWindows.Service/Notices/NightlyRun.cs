using Hangfire;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Evaluates an organization's open tasks over the coming year, keeps what changed, and writes the messages that follow
/// from it: all of it or nothing. Running it again in the same night adds nothing.
/// </summary>
public sealed partial class NightlyRun(
    WorkWindowsDb db, CurrentOrganization current, ParcelSources sources, NightReader reader, NightWriter writer,
    OutlookKeeper outlooks, BookingStore bookings, IBackgroundJobClient jobs, IClock clock, ILogger<NightlyRun> logger)
{
    /// <exception cref="Hosting.ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        RunAsync(organizationId, isNight: true, cancellation);

    /// <summary>
    /// The same for the tasks that something touched since the last look, and for all tasks of landowners whose offers
    /// still wait to be sent, which may have to be written anew; what was said of others stands. Nothing where nothing
    /// has changed.
    /// </summary>
    /// <exception cref="Hosting.ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public Task LookAsync(Guid organizationId, CancellationToken cancellation) =>
        RunAsync(organizationId, isNight: false, cancellation);

    private async Task RunAsync(Guid organizationId, bool isNight, CancellationToken cancellation)
    {
        current.Set(organizationId);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // A second run of the organization waits here and then finds what the first one wrote.
        await db.Database.ExecuteSqlAsync(
            $"select pg_advisory_xact_lock(hashtextextended({$"nightly:{organizationId}"}, 0))", cancellation);
        var due = await db.DueLooks.ToListAsync(cancellation);
        if (due.Count == 0 && !isNight)
            return;
        if (isNight)
            await bookings.TurnDayAsync(await TodayAsync(cancellation), cancellation);
        var change = isNight ? null : DueLook.Together(due);
        db.RemoveRange(due);
        var night = await reader.ReadAsync(
            clock.GetCurrentInstant(), change is null ? db.PlannedTasks : await TouchedAsync(change, cancellation),
            isWhole: change is null, cancellation);
        await outlooks.KeepAsync(night.Now, night.Tasks, cancellation);
        var plan = NightPlan.Of(night);
        await writer.WriteAsync(night, plan, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);

        foreach (var person in plan.Unreachable)
            LogUnreachable(person);
        LogDone(organizationId, night.Tasks.Count, plan.Messages.Count);
        if (plan.Messages.Count > 0)
            jobs.Enqueue<OutboxJob>(job => job.SendAsync(organizationId, CancellationToken.None));
    }

    /// <returns>The day it is in the organization's time zone.</returns>
    private async Task<LocalDate> TodayAsync(CancellationToken cancellation)
    {
        var zone = await db.Organizations.Select(organization => organization.TimeZone).SingleAsync(cancellation);
        return clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }

    private async Task<IQueryable<PlannedTask>> TouchedAsync(WeatherChange change, CancellationToken cancellation)
    {
        var parcels = await sources.TouchedByAsync(change, cancellation);
        var offered = db.Messages
            .Where(message => message.Kind == NoticeKinds.GoodToCut && message.SentAt == null && message.DeadAt == null)
            .Select(message => message.RecipientId);
        return db.PlannedTasks.Where(task =>
            parcels.Contains(task.ParcelId) || offered.Contains(task.Parcel.Property.LandownerId));
    }

    [LoggerMessage(
        LogLevel.Information, "Night of {OrganizationId}: {Tasks} tasks evaluated, {Messages} messages written")]
    private partial void LogDone(Guid organizationId, int tasks, int messages);

    [LoggerMessage(LogLevel.Warning, "Person {PersonId} is to be told something and has no mail address")]
    private partial void LogUnreachable(Guid personId);
}
