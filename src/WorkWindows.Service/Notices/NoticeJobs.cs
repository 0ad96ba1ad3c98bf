using Hangfire;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

public sealed class NightlyJob(NightlyRun run)
{
    [DisableConcurrentExecution("nightly:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        run.RunAsync(organizationId, cancellation);
}

/// <summary>The same for the open tasks that a change of weather touches.</summary>
public sealed class WeatherLookJob(NightlyRun run)
{
    [DisableConcurrentExecution("nightly:{0}", 60)]
    public Task RunAsync(
        Guid organizationId, Guid[] records, Guid[] outlooks, Guid[] parcels, CancellationToken cancellation) =>
        run.LookAsync(organizationId, new(records, outlooks, parcels), cancellation);
}

/// <summary>
/// Has an organization's tasks looked at at once and not at night: what was changed may close a day on which a crew is
/// at work.
/// </summary>
public sealed class PromptLook(IBackgroundJobClient jobs, CurrentOrganization current)
{
    public void Enqueue()
    {
        var organization = current.Id!.Value;
        jobs.Enqueue<NightlyJob>(job => job.RunAsync(organization, CancellationToken.None));
    }

    /// <summary>Only the tasks that the change touches; none when nothing has changed.</summary>
    public void Enqueue(WeatherChange change)
    {
        if (change.IsEmpty)
            return;
        var organization = current.Id!.Value;
        Guid[] records = [.. change.Records.Order()];
        Guid[] outlooks = [.. change.Outlooks.Order()];
        Guid[] parcels = [.. change.Parcels.Order()];
        jobs.Enqueue<WeatherLookJob>(
            job => job.RunAsync(organization, records, outlooks, parcels, CancellationToken.None));
    }
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
