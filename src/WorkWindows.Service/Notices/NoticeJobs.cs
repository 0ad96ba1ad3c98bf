using Hangfire;

namespace WorkWindows.Service.Notices;

public sealed class NightlyJob(NightlyRun run)
{
    [DisableConcurrentExecution("nightly:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        run.RunAsync(organizationId, cancellation);
}

public sealed class OutboxJob(Outbox outbox)
{
    public Task SendAsync(Guid organizationId, CancellationToken cancellation) =>
        outbox.SendDueAsync(organizationId, cancellation);
}

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
