using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// Looks at the crews of an organization that are watched, and writes to the contacts of those that are not heard from.
/// What is due follows from the rows alone: it may run twice, late, or on several servers at once.
/// </summary>
public sealed partial class WatchRound(
    WorkWindowsDb db, CurrentOrganization current, WatchStore store, AlarmLink link, IBackgroundJobClient jobs,
    IOptions<MailOptions> mail, IClock clock, ILogger<WatchRound> logger)
{
    /// <summary>A call should have left by the second round after it.</summary>
    private static readonly Duration LongestWait = Duration.FromMinutes(2);

    public async Task RunAsync(Guid organizationId, CancellationToken cancellation)
    {
        current.Set(organizationId);
        var open = await db.CrewWatches.Where(watch => watch.EndedAt == null).OrderBy(watch => watch.DueAt)
            .Select(watch => watch.Id).ToListAsync(cancellation);
        var calls = 0;
        // A watch that cannot be looked at takes no other crew with it.
        var faults = new List<Exception>();
        foreach (var watch in open)
        {
            try
            {
                calls += await LookAsync(watch, cancellation);
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                faults.Add(fault);
            }
            db.ChangeTracker.Clear();
        }
        if (calls > 0)
            jobs.Enqueue<OutboxJob>(job => job.SendAsync(organizationId, CancellationToken.None));
        await ComplainAsync(cancellation);
        if (faults.Count > 0)
            throw new AggregateException($"{faults.Count} of {open.Count} watches could not be looked at.", faults);
    }

    /// <returns>How many calls were written.</returns>
    private async Task<int> LookAsync(Guid watchId, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await store.LockAsync(watchId, cancellation) is not { EndedAt: null } watch)
            return 0;
        var now = clock.GetCurrentInstant();
        var plan = Escalation.Plan(watch.Times, now);
        watch.DueAt = plan.DueAt;
        if (plan.NextCallAt is { } next)
        {
            var missed = watch.Escalating ?? Raise(watch, now);
            missed.NextCallAt = next;
            if (plan.Calls.Length > 0)
                await WriteAsync(watch, missed, plan, now, cancellation);
        }
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        foreach (var call in plan.Calls)
            LogCalled(watchId, call.Number);
        return plan.Calls.Length;
    }

    private MissedCheckIn Raise(CrewWatch watch, Instant now)
    {
        var missed = new MissedCheckIn { WatchId = watch.Id, DueAt = watch.DueAt, RaisedAt = now, NextCallAt = now };
        db.Add(missed);
        return missed;
    }

    private async Task WriteAsync(
        CrewWatch watch, MissedCheckIn missed, EscalationPlan plan, Instant now, CancellationToken cancellation)
    {
        var scene = await store.SceneAsync(watch, cancellation);
        var contacts = await WatchContact.ReachableAsync(db, [.. watch.Contacts], cancellation);
        foreach (var (number, place) in plan.Calls)
        {
            var reachable = contacts.Single(one => one.Contact.Place == place).Reachable;
            var call = new AlarmCall { MissedId = missed.Id, Number = number, Place = place, WrittenAt = now };
            var notice = MissedCheckInNotice.Of(
                scene, watch, missed, number, plan.NextCallAt!.Value, link.Of(watch, scene.OrganizationId, call));
            db.Add(call);
            db.AddRange(Message.EveryWay(
                call.MessageKey, NoticeKinds.MissedCheckIn, reachable, notice, now, mail.Value));
        }
    }

    /// <summary>Says, every minute, that calls reach nobody.</summary>
    private async Task ComplainAsync(CancellationToken cancellation)
    {
        var escalating = await db.MissedCheckIns.AsNoTracking().Include(missed => missed.Calls)
            .Where(missed => missed.AcknowledgedAt == null && missed.ClearedAt == null).ToListAsync(cancellation);
        if (escalating.Count == 0)
            return;
        if (!mail.Value.HasServer)
            LogNoServer(escalating.Count);
        var before = clock.GetCurrentInstant() - LongestWait;
        var late = escalating.SelectMany(missed => missed.Calls).Where(call => call.WrittenAt <= before)
            .Select(call => call.MessageKey).ToList();
        var waiting = await db.Messages.CountAsync(
            message => late.Contains(message.DedupeKey) && message.SentAt == null, cancellation);
        if (waiting > 0)
            LogWaiting(waiting);
    }

    [LoggerMessage(LogLevel.Warning, "Watch {WatchId}: the crew is not heard from, call {Number} is written")]
    private partial void LogCalled(Guid watchId, int number);

    [LoggerMessage(LogLevel.Error,
        "NOBODY IS CALLED: {Count} crews are not heard from, and Mail:Host names no mail server; the calls are only "
        + "files")]
    private partial void LogNoServer(int count);

    [LoggerMessage(
        LogLevel.Error, "{Count} CALLS FOR CREWS THAT ARE NOT HEARD FROM HAVE NOT LEFT; see the outbox's log")]
    private partial void LogWaiting(int count);
}

/// <summary>
/// Starts the rounds of all organizations, each as a job of its own: where one fails, the others go on.
/// </summary>
public sealed class WatchRounds(WorkWindowsDb db, IBackgroundJobClient jobs)
{
    public async Task StartAsync(CancellationToken cancellation)
    {
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellation))
            jobs.Enqueue<WatchRoundJob>(job => job.RunAsync(id, CancellationToken.None));
    }
}

[Queue(JobQueues.Prompt)]
public sealed class WatchRoundsJob(WatchRounds rounds)
{
    public const string Id = "watches";

    /// <remarks>Not tried again when it fails: the next minute does that.</remarks>
    [AutomaticRetry(Attempts = 0)]
    public Task RunAsync(CancellationToken cancellation) => rounds.StartAsync(cancellation);
}

[Queue(JobQueues.Prompt)]
public sealed class WatchRoundJob(WatchRound round)
{
    [AutomaticRetry(Attempts = 0)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        round.RunAsync(organizationId, cancellation);
}
