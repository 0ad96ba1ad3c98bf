using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace WorkWindows.Service.Storage;

/// <summary>
/// A transaction that only one caller of an organization is in at a time, for changes that depend on what else is
/// stored, such as imports. Within another it is a part of that one.
/// </summary>
public sealed class OrganizationChange : IAsyncDisposable
{
    private readonly IDbContextTransaction? _own;

    private OrganizationChange(IDbContextTransaction? own) => _own = own;

    /// <summary>Waits until the organization's other changes of this kind have ended.</summary>
    public static async Task<OrganizationChange> BeginAsync(
        WorkWindowsDb db, CurrentOrganization organization, CancellationToken cancellation)
    {
        var own = db.Database.CurrentTransaction is null
            ? await db.Database.BeginTransactionAsync(cancellation)
            : null;
        // Given back by the server when the transaction ends, however it ends.
        await db.Database.ExecuteSqlAsync(
            $"select pg_advisory_xact_lock(hashtextextended({organization.Id.ToString()}, 0))", cancellation);
        return new(own);
    }

    public Task CommitAsync(CancellationToken cancellation) => _own?.CommitAsync(cancellation) ?? Task.CompletedTask;

    public ValueTask DisposeAsync() => _own?.DisposeAsync() ?? ValueTask.CompletedTask;
}
