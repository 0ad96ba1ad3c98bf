using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Landowners;

/// <summary>
/// Personal links: whoever has one sees the landowner's page without signing in. The address is the secret; a new one or
/// none puts an end to the old (docs/decisions/0016-personal-links.md).
/// </summary>
public sealed class LandLinks(WorkWindowsDb db, Caller caller, AuditLog audit, IOptions<SiteOptions> site)
{
    private const int SecretBytes = 32;

    /// <returns>The address of a landowner's link; null where there is none.</returns>
    public async Task<string?> ReadAsync(Guid ownerId, HttpRequest request, CancellationToken cancellation) =>
        await db.NoticeSettings.Where(row => row.PersonId == ownerId).Select(row => row.LandKey).SingleOrDefaultAsync(cancellation)
            is { } key ? AddressOf(key, request) : null;

    /// <summary>Gives a landowner a new link, and a calendar where there is none yet.</summary>
    /// <returns>Whether there is such a landowner.</returns>
    public Task<bool> RenewAsync(Guid ownerId, CancellationToken cancellation) => SetAsync(ownerId, settings =>
    {
        settings.LandKey = NewKey();
        settings.CalendarKey ??= NewKey();
    }, cancellation);

    /// <summary>Takes the link away.</summary>
    /// <inheritdoc cref="RenewAsync"/>
    public Task<bool> WithdrawAsync(Guid ownerId, CancellationToken cancellation) =>
        SetAsync(ownerId, settings => settings.LandKey = null, cancellation);

    private async Task<bool> SetAsync(Guid ownerId, Action<NoticeSettings> set, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (!await db.People.AnyAsync(person => person.Id == ownerId && person.Role == Role.Landowner, cancellation))
            return false;
        var settings = await db.NoticeSettings.SingleOrDefaultAsync(row => row.PersonId == ownerId, cancellation);
        if (settings is null)
            db.Add(settings = new() { PersonId = ownerId });
        var had = settings.LandKey is not null;
        set(settings);
        // The key itself is no matter of the trail.
        await audit.AddAsync(
            AuditKind.LandLink, ownerId, new LinkTrail(had), new LinkTrail(settings.LandKey is not null), cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }

    private string AddressOf(string key, HttpRequest request)
    {
        var root = site.Value.Address?.TrimEnd('/') ?? $"{request.Scheme}://{request.Host}";
        return $"{root}/land/{caller.OrganizationId}?key={key}";
    }

    private sealed record LinkTrail(bool HasLink);

    private static string NewKey() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
}
