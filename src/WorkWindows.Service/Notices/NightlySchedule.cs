using Hangfire;
using Hangfire.Storage;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Keeps one nightly job an organization, at four in the morning of its own zone.</summary>
public sealed class NightlySchedule(WorkWindowsDb db, IRecurringJobManager recurring, JobStorage storage)
{
    private const string Prefix = "nightly:";
    private const string AtFour = "0 4 * * *";

    public async Task SynchronizeAsync(CancellationToken cancellation)
    {
        var organizations = await ScheduledOrganization.AllAsync(db, cancellation);
        foreach (var (id, zone) in organizations)
        {
            recurring.AddOrUpdate<NightlyJob>(
                $"{Prefix}{id}", job => job.RunAsync(id, CancellationToken.None), AtFour,
                new RecurringJobOptions { TimeZone = TimeZoneInfo.FindSystemTimeZoneById(zone) });
        }
        using var connection = storage.GetConnection();
        foreach (var gone in connection.GetRecurringJobs().Select(job => job.Id)
            .Where(job => job.StartsWith(Prefix, StringComparison.Ordinal))
            .Except(organizations.Select(organization => $"{Prefix}{organization.Id}")))
        {
            recurring.RemoveIfExists(gone);
        }
    }

    /// <summary>The jobs that are there whatever organizations there are.</summary>
    public void AddStanding()
    {
        recurring.AddOrUpdate<OutboxRoundJob>("outbox", job => job.RunAsync(CancellationToken.None), Cron.Minutely());
        recurring.AddOrUpdate<LookRoundJob>("looks", job => job.RunAsync(CancellationToken.None), Cron.Minutely());
        recurring.AddOrUpdate<NightlyScheduleJob>(
            "schedule", job => job.RunAsync(CancellationToken.None), Cron.Hourly());
    }
}

/// <summary>Registers the jobs as soon as the database is up.</summary>
internal sealed class NightlyScheduleStartup(IServiceScopeFactory scopes) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var schedule = scope.ServiceProvider.GetRequiredService<NightlySchedule>();
        schedule.AddStanding();
        await schedule.SynchronizeAsync(cancellationToken);
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(scope.ServiceProvider.GetRequiredService<WorkWindowsDb>(), cancellationToken))
        {
            await using var own = scopes.CreateAsyncScope();
            own.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(id);
            await own.ServiceProvider.GetRequiredService<FirstLook>().NoteAsync(cancellationToken);
        }
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
