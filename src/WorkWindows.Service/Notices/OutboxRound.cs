using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Sends what is due of every organization.</summary>
public sealed class OutboxRound(WorkWindowsDb db, IServiceScopeFactory scopes)
{
    public async Task RunAsync(CancellationToken cancellation)
    {
        // An organization whose mails cannot be sent takes no other with it.
        var faults = new List<Exception>();
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellation))
        {
            await using var scope = scopes.CreateAsyncScope();
            try
            {
                await scope.ServiceProvider.GetRequiredService<Outbox>().SendDueAsync(id, cancellation);
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                faults.Add(fault);
            }
        }
        if (faults.Count > 0)
            throw new AggregateException($"The mails of {faults.Count} organizations could not be sent.", faults);
    }
}

/// <summary>What may be known of every organization before one of them is set.</summary>
internal sealed record ScheduledOrganization(Guid Id, string TimeZone)
{
    public static Task<List<ScheduledOrganization>> AllAsync(WorkWindowsDb db, CancellationToken cancellation) =>
        db.Database.SqlQuery<ScheduledOrganization>($"select id, time_zone from organizations_on_schedule()")
            .ToListAsync(cancellation);
}
