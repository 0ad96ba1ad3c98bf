using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Evaluates an organization's open tasks over the coming year, keeps what changed, and writes the messages that follow
/// from it: all of it or nothing. Running it again in the same night adds nothing.
/// </summary>
public sealed partial class NightlyRun(
    WorkWindowsDb db, CurrentOrganization current, TaskEvaluator evaluator, ParcelSources sources,
    DecisionStore decisions, IBackgroundJobClient jobs, IOptions<MailOptions> mail, IClock clock, ILogger<NightlyRun> logger)
{
    private const int DaysEvaluated = 366;

    /// <summary>Announcements that ended before yesterday in any zone cannot touch a coming day.</summary>
    private const int DaysBack = 3;

    /// <exception cref="ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        RunAsync(organizationId, db.PlannedTasks, cancellation);

    /// <summary>The same for the tasks that a change of weather touches; what was said of others stands.</summary>
    /// <exception cref="ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public async Task LookAsync(Guid organizationId, WeatherChange change, CancellationToken cancellation)
    {
        current.Set(organizationId);
        var parcels = await sources.TouchedByAsync(change, cancellation);
        await RunAsync(
            organizationId, db.PlannedTasks.Where(task => parcels.Contains(task.ParcelId)), cancellation);
    }

    private async Task RunAsync(
        Guid organizationId, IQueryable<PlannedTask> lookedAt, CancellationToken cancellation)
    {
        current.Set(organizationId);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // A second run of the organization waits here and then finds what the first one wrote.
        await db.Database.ExecuteSqlAsync(
            $"select pg_advisory_xact_lock(hashtextextended({$"nightly:{organizationId}"}, 0))", cancellation);
        var now = clock.GetCurrentInstant();
        var tasks = await EvaluateAsync(now, lookedAt, cancellation);
        var night = await NightAsync(now, tasks, cancellation);
        var plan = NightPlan.Of(night);
        Write(night, plan);
        await SupersedeAsync(night, plan, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);

        foreach (var person in plan.Unreachable)
            LogUnreachable(person);
        LogDone(organizationId, tasks.Count, plan.Messages.Count);
        if (plan.Messages.Count > 0)
            jobs.Enqueue<OutboxJob>(job => job.SendAsync(organizationId, CancellationToken.None));
    }

    private IQueryable<PlannedTask> Open => db.PlannedTasks.Where(task => task.CompletedOn == null);

    private async Task<List<TaskTonight>> EvaluateAsync(
        Instant now, IQueryable<PlannedTask> lookedAt, CancellationToken cancellation)
    {
        var open = lookedAt.Where(task => task.CompletedOn == null);
        var zones = await open.Select(task => task.Parcel.Property.TimeZone).Distinct().ToListAsync(cancellation);
        var waiting = await open.Where(task => task.Prerequisites.Any(link =>
                Open.Any(first => first.Id == link.PrerequisiteId)))
            .Select(task => task.Id).ToHashSetAsync(cancellation);
        var tonight = new List<TaskTonight>();
        foreach (var zone in zones.Order(StringComparer.Ordinal))
        {
            var today = now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
            var days = new DaySpan(today, DaysEvaluated);
            var evaluated = await evaluator.EvaluateAsync(
                open.Where(task => task.Parcel.Property.TimeZone == zone), days, cancellation);
            await decisions.AddChangedAsync(evaluated, days, cancellation);
            // Before the next zone's, which may rest on the same packs and snapshots.
            await db.SaveChangesAsync(cancellation);
            tonight.AddRange(evaluated.Select(task => new TaskTonight(
                task.Task, task.Evaluation, today, waiting.Contains(task.Task.Id))));
        }
        return tonight;
    }

    private async Task<Night> NightAsync(Instant now, List<TaskTonight> tasks, CancellationToken cancellation)
    {
        var organization = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        var date = now.InZone(DateTimeZoneProviders.Tzdb[organization.TimeZone]).Date;
        var oldest = date.PlusDays(-DaysBack);
        var lookedAt = tasks.Select(task => task.Task.Id).ToList();
        var others = Open.Where(task => !lookedAt.Contains(task.Id));
        var announced = await db.Announcements
            .Where(window => window.StoppedAt == null && window.LastDay >= oldest
                && !others.Any(task => task.Id == window.TaskId))
            .OrderBy(window => window.FirstDay).ThenBy(window => window.Id).ToListAsync(cancellation);
        var people = await db.People.AsNoTracking()
            .Select(person => new Recipient(person.Id, person.DisplayName, person.Email))
            .ToDictionaryAsync(person => person.Id, cancellation);
        var written = await db.Messages.Where(message => message.CreatedAt >= now - Duration.FromDays(DaysBack))
            .Select(message => message.DedupeKey).ToHashSetAsync(cancellation);
        var partly = await others.Where(task => task.Parcel.Property.LandownerId != null)
            .Select(task => task.Parcel.Property.LandownerId!.Value).ToHashSetAsync(cancellation);
        return new(now, date, new(organization.Name, organization.PostalAddress), tasks, announced, people, written)
        {
            SeenInPart = partly,
        };
    }

    private void Write(Night night, NightPlan plan)
    {
        foreach (var (window, lastDay) in plan.Extended)
            window.LastDay = lastDay;
        foreach (var window in plan.Stopped)
            window.StoppedAt = night.Now;
        db.Announcements.AddRange(plan.Announced);
        db.Messages.AddRange(plan.Messages.Select(draft => Message.Of(draft, night.Now, night.Date, mail.Value)));
    }

    /// <summary>An offer that still waits to be sent must not arrive after the notice that takes it back.</summary>
    private async Task SupersedeAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        var stopped = plan.Messages.Where(draft => draft.Kind == NoticeKinds.StopWork)
            .Select(draft => draft.To.Id).ToHashSet();
        var waiting = await db.Messages
            .Where(message => message.RecipientId != null && stopped.Contains(message.RecipientId.Value)
                && message.SentAt == null && message.DeadAt == null
                && (message.Kind == NoticeKinds.GoodToCut || message.Kind == NoticeKinds.Reminder))
            .ToListAsync(cancellation);
        foreach (var message in waiting)
            (message.DeadAt, message.LastError) = (night.Now, "superseded by a stop-work notice");
    }

    [LoggerMessage(LogLevel.Information, "Night of {OrganizationId}: {Tasks} tasks evaluated, {Messages} messages written")]
    private partial void LogDone(Guid organizationId, int tasks, int messages);

    [LoggerMessage(LogLevel.Warning, "Person {PersonId} is to be told something and has no mail address")]
    private partial void LogUnreachable(Guid personId);
}
