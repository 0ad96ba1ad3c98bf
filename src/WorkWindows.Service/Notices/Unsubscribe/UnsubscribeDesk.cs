using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Unsubscribe;

/// <param name="Kind">The kind of notice.</param>
/// <param name="Organization">Who sends it.</param>
/// <param name="IsOff">Whether the person gets no mails of the kind any more.</param>
internal sealed record UnsubscribeView(NoticeKind Kind, string Organization, bool IsOff);

/// <summary>
/// What the reader of a mail may turn off by its signed address, whoever has signed in to the browser: it works in a
/// scope of its own.
/// </summary>
public sealed class UnsubscribeDesk(IServiceScopeFactory scopes, IClock clock)
{
    /// <returns>Null when the address is not signed or of nothing that may be turned off.</returns>
    internal Task<UnsubscribeView?> ReadAsync(
        Guid organizationId, Guid personId, string kind, string? signature, CancellationToken cancellation) =>
        InScopeAsync(organizationId, personId, kind, signature, (_, _) => Task.CompletedTask, cancellation);

    /// <summary>
    /// Turns the mails of the kind off, at once and as often as asked; other ways that were chosen stay.
    /// </summary>
    /// <inheritdoc cref="ReadAsync"/>
    internal Task<UnsubscribeView?> TurnOffAsync(
        Guid organizationId, Guid personId, string kind, string? signature, CancellationToken cancellation) =>
        InScopeAsync(organizationId, personId, kind, signature, async (db, choice) =>
        {
            var now = clock.GetCurrentInstant();
            var ways = (choice?.Channels ?? NoticeChoice.Unless) & ~NoticeChannels.Mail;
            if (choice is not null && !choice.Channels.HasFlag(NoticeChannels.Mail))
                return;
            await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
            await db.Database.ExecuteSqlAsync($"""
                insert into notice_choices (person_id, kind, channels, chosen_at)
                values ({personId}, {kind}, {(int)ways}, {now})
                on conflict (person_id, kind) do update set channels = excluded.channels, chosen_at = excluded.chosen_at
                """, cancellation);
            // Nobody has signed in: whoever holds the mail has acted for its reader.
            db.Add(new AuditEntry
            {
                At = now,
                PersonId = personId,
                By = await db.People.Where(person => person.Id == personId)
                    .Select(person => $"{person.DisplayName}, by the link of a mail").SingleAsync(cancellation),
                Kind = AuditKind.NoticeChoice,
                RowId = personId,
                Before = choice is null ? null : Trail(kind, choice.Channels),
                After = Trail(kind, ways),
            });
            await db.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }, cancellation);

    private static string Trail(string kind, NoticeChannels ways) =>
        JsonSerializer.Serialize(new { kind, ways = ChoiceForm.WordsOf(ways) }, JsonSerializerOptions.Web);

    private async Task<UnsubscribeView?> InScopeAsync(
        Guid organizationId, Guid personId, string kind, string? signature,
        Func<WorkWindowsDb, NoticeChoice?, Task> act, CancellationToken cancellation)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organizationId);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var organization = await db.Organizations.AsNoTracking().SingleOrDefaultAsync(cancellation);
        if (organization is null || NoticeKinds.Find(kind) is not { MayBeTurnedOff: true } found
            || !UnsubscribeLink.IsSigned(organization, personId, kind, signature))
        {
            return null;
        }
        await act(db, await ChoiceAsync());
        var isOff = await ChoiceAsync() is { } choice && !choice.Channels.HasFlag(NoticeChannels.Mail);
        return new(found, organization.Name, isOff);

        Task<NoticeChoice?> ChoiceAsync() => db.NoticeChoices.AsNoTracking()
            .SingleOrDefaultAsync(row => row.PersonId == personId && row.Kind == kind, cancellation);
    }
}
