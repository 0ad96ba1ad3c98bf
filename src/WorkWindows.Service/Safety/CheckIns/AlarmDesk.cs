using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// What the reader of a call may see and do by its signed address, whoever has signed in to the browser: it works in a
/// scope of its own.
/// </summary>
public sealed class AlarmDesk(IServiceScopeFactory scopes)
{
    /// <returns>Null when the address is of no call or not signed.</returns>
    internal Task<AlarmView?> ReadAsync(
        Guid organizationId, Guid callId, string? signature, CancellationToken cancellation) =>
        InScopeAsync(organizationId, callId, signature, (_, _) => Task.CompletedTask, cancellation);

    /// <summary>
    /// The contact that the call was written to takes it over; what has ended meanwhile stays as it is.
    /// </summary>
    /// <inheritdoc cref="ReadAsync"/>
    internal Task<AlarmView?> TakeOverAsync(
        Guid organizationId, Guid callId, string? signature, CancellationToken cancellation) =>
        InScopeAsync(organizationId, callId, signature, async (scope, found) =>
        {
            var done = await scope.GetRequiredService<WatchHandler>()
                .AcknowledgeAsync(
                    found.WatchId, found.Call, new(found.Contact.PersonId, found.Contact.Name), cancellation);
            if (done.Outcome is not (ChangeOutcome.Done or ChangeOutcome.Conflict))
                throw new InvalidOperationException($"Watch {found.WatchId}: {done.Outcome}.");
        }, cancellation);

    private async Task<AlarmView?> InScopeAsync(
        Guid organizationId, Guid callId, string? signature, Func<IServiceProvider, Found, Task> act,
        CancellationToken cancellation)
    {
        await using var scope = scopes.CreateAsyncScope();
        var services = scope.ServiceProvider;
        services.GetRequiredService<CurrentOrganization>().Set(organizationId);
        if (await FindAsync(services, callId, signature, cancellation) is not { } found)
            return null;
        await act(services, found);
        services.GetRequiredService<WorkWindowsDb>().ChangeTracker.Clear();
        var store = services.GetRequiredService<WatchStore>();
        var watch = await store.All.SingleAsync(row => row.Id == found.WatchId, cancellation);
        return new(
            await store.SceneAsync(watch, cancellation), watch, found.Contact,
            watch.Missed.Single(missed => missed.Id == found.Call.MissedId));
    }

    private static async Task<Found?> FindAsync(
        IServiceProvider services, Guid callId, string? signature, CancellationToken cancellation)
    {
        var db = services.GetRequiredService<WorkWindowsDb>();
        var called = db.AlarmCalls.AsNoTracking().Where(row => row.Id == callId);
        if (await called.SingleOrDefaultAsync(cancellation) is not { } call)
            return null;
        var watch = await services.GetRequiredService<WatchStore>().All
            .SingleAsync(row => row.Missed.Any(missed => missed.Id == call.MissedId), cancellation);
        return AlarmLink.IsSigned(watch, call, signature)
            ? new(watch.Id, call, watch.Contacts.Single(contact => contact.Place == call.Place))
            : null;
    }

    private sealed record Found(Guid WatchId, AlarmCall Call, WatchContact Contact);
}

/// <param name="Scene">Where it is.</param>
/// <param name="Watch">The watch.</param>
/// <param name="Reader">Whom the call was written to.</param>
/// <param name="Missed">What was missed.</param>
internal sealed record AlarmView(WatchScene Scene, CrewWatch Watch, WatchContact Reader, MissedCheckIn Missed);
