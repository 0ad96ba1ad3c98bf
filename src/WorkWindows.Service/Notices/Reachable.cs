using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Where somebody is reached at once.</summary>
/// <param name="PersonId">The person, or null for somebody outside of the organization.</param>
/// <param name="Mail">The mail address, or null for a person who has none.</param>
/// <param name="Webhook">Where signed requests go, or null for nowhere.</param>
public sealed record Reachable(Guid? PersonId, string? Mail, string? Webhook)
{
    /// <returns>The webhooks of those people who have one.</returns>
    internal static Task<Dictionary<Guid, string>> WebhooksAsync(
        WorkWindowsDb db, IEnumerable<Guid?> people, CancellationToken cancellation)
    {
        var ids = people.OfType<Guid>().ToList();
        return db.NoticeSettings.Where(row => ids.Contains(row.PersonId) && row.WebhookAddress != null)
            .ToDictionaryAsync(row => row.PersonId, row => row.WebhookAddress!, cancellation);
    }
}
