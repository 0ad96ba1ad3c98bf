using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>Who says something, by name.</summary>
/// <param name="PersonId">The person, or null for a machine or for somebody who does not sign in.</param>
/// <param name="Name">The name to write down.</param>
public sealed record Signer(Guid? PersonId, string Name)
{
    internal static async Task<Signer> OfAsync(Caller caller, WorkWindowsDb db, CancellationToken cancellation) =>
        caller.PersonId is { } id
            ? new(id, await db.People.Where(person => person.Id == id).Select(person => person.DisplayName)
                .SingleAsync(cancellation))
            : new(null, caller.Name);
}
