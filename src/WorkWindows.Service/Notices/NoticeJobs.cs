using Hangfire;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Notices;

public sealed class NightlyJob(NightlyRun run)
{
    [DisableConcurrentExecution("nightly:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        run.RunAsync(organizationId, cancellation);
}

/// <summary>The same for what has changed since the last look, if anything has.</summary>
[Queue(JobQueues.Prompt)]
public sealed class LookJob(NightlyRun run)
{
    /// <remarks>Not tried again when it fails: the next minute does that.</remarks>
    [AutomaticRetry(Attempts = 0)]
    [DisableConcurrentExecution("nightly:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        run.LookAsync(organizationId, cancellation);
}

[Queue(JobQueues.Prompt)]
public sealed class LookRoundJob(LookRound round)
{
    [AutomaticRetry(Attempts = 0)]
    public Task RunAsync(CancellationToken cancellation) => round.RunAsync(cancellation);
}

[Queue(JobQueues.Prompt)]
public sealed class OutboxJob(Outbox outbox)
{
    public Task SendAsync(Guid organizationId, CancellationToken cancellation) =>
        outbox.SendDueAsync(organizationId, cancellation);
}

[Queue(JobQueues.Prompt)]
public sealed class OutboxRoundJob(OutboxRound round)
{
    /// <remarks>Not tried again when it fails: the next minute does that.</remarks>
    [AutomaticRetry(Attempts = 0)]
    public Task RunAsync(CancellationToken cancellation) => round.RunAsync(cancellation);
}

public sealed class NightlyScheduleJob(NightlySchedule schedule)
{
    [AutomaticRetry(Attempts = 0)]
    public Task RunAsync(CancellationToken cancellation) => schedule.SynchronizeAsync(cancellation);
}
