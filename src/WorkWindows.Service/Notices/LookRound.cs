using Hangfire;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Begins the looks that are due and that nobody began, because the service died or the look failed.</summary>
public sealed class LookRound(WorkWindowsDb db, IServiceScopeFactory scopes, IBackgroundJobClient jobs)
{
    public async Task RunAsync(CancellationToken cancellation)
    {
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellation))
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(id);
            if (await scope.ServiceProvider.GetRequiredService<WorkWindowsDb>().DueLooks.AnyAsync(cancellation))
                jobs.Enqueue<LookJob>(job => job.RunAsync(id, CancellationToken.None));
        }
    }
}
