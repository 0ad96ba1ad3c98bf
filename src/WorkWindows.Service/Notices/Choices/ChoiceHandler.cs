using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Webhooks;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>
/// Keeps what people want to be told, and how. Everybody chooses for themselves, consultants for all.
/// </summary>
public sealed class ChoiceHandler(
    WorkWindowsDb db, Caller caller, AuditLog audit, IOptions<WebhookOptions> webhooks, IClock clock)
{
    private const int KeyBytes = 24;

    /// <summary>What the audit trail says of a calendar feed: never its key.</summary>
    /// <param name="HasFeed">Whether there is one.</param>
    /// <param name="AddressedAt">When it was given its address; null where that was not written down.</param>
    private sealed record FeedTrail(bool HasFeed, Instant? AddressedAt);

    /// <returns>Null where there is no such person, or the caller may not choose for them.</returns>
    public async Task<ChoiceView?> ReadAsync(Guid personId, CancellationToken cancellation) =>
        await PersonAsync(personId, cancellation) is { } person
            ? ChoiceView.Of(
                person.Role, await SettingsAsync(personId, cancellation), await ChoicesAsync(personId, cancellation))
            : null;

    public async Task<Change<ChoiceView>> SaveAsync(Guid personId, ChoiceForm form, CancellationToken cancellation)
    {
        if (await PersonAsync(personId, cancellation) is not { } person)
            return Change.NotFound<ChoiceView>();
        var faults = new FieldFaults();
        var fields = form.Check(person.Role, webhooks.Value.AllowPrivateAddresses, faults);
        if (faults.Any)
            return Change.Refused<ChoiceView>(faults);
        var settings = await SettingsAsync(personId, cancellation);
        var choices = await ChoicesAsync(personId, cancellation);
        var before = ChoiceView.Of(person.Role, settings, choices);
        if (settings is null)
            db.Add(settings = new() { PersonId = personId });
        var isNewAddress = fields.Webhook is not null && fields.Webhook != settings.WebhookAddress;
        (settings.TimeZone, settings.Celsius, settings.Hectares) = (fields.TimeZone, fields.Celsius, fields.Hectares);
        (settings.QuietFrom, settings.QuietUntil) = (fields.Quiet?.From, fields.Quiet?.Until);
        settings.WebhookAddress = fields.Webhook;
        settings.WebhookSecret = isNewAddress ? NewSecret() : fields.Webhook is null ? null : settings.WebhookSecret;
        choices = Replace(personId, choices, fields);
        var after = ChoiceView.Of(person.Role, settings, choices);
        await audit.AddAsync(AuditKind.NoticeChoice, personId, before, after, cancellation);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(after with { WebhookSecret = isNewAddress ? settings.WebhookSecret : null });
    }

    /// <summary>Gives the person's calendar feed a new key, so that its old address leads nowhere.</summary>
    /// <returns>The key, or null where there is no such person.</returns>
    public async Task<string?> NewCalendarAsync(Guid personId, CancellationToken cancellation)
    {
        if (await PersonAsync(personId, cancellation) is null)
            return null;
        var settings = await SettingsAsync(personId, cancellation);
        if (settings is null)
            db.Add(settings = new() { PersonId = personId });
        var before = settings.CalendarKey is null ? null : new FeedTrail(true, null);
        settings.CalendarKey = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(KeyBytes));
        await audit.AddAsync(
            AuditKind.NoticeChoice, personId, before, new FeedTrail(true, clock.GetCurrentInstant()), cancellation);
        await db.SaveChangesAsync(cancellation);
        return settings.CalendarKey;
    }

    /// <returns>Whether there is such a person.</returns>
    public async Task<bool> EndCalendarAsync(Guid personId, CancellationToken cancellation)
    {
        if (await PersonAsync(personId, cancellation) is null)
            return false;
        if (await SettingsAsync(personId, cancellation) is { CalendarKey: not null } settings)
        {
            settings.CalendarKey = null;
            await audit.AddAsync(
                AuditKind.NoticeChoice, personId, new FeedTrail(true, null), new FeedTrail(false, null), cancellation);
            await db.SaveChangesAsync(cancellation);
        }
        return true;
    }

    private List<NoticeChoice> Replace(Guid personId, List<NoticeChoice> choices, ChoiceFields fields)
    {
        var now = clock.GetCurrentInstant();
        var wanted = fields.Ways.ToDictionary();
        db.RemoveRange(choices.Where(choice => !wanted.ContainsKey(choice.Kind)));
        var kept = choices.FindAll(choice => wanted.ContainsKey(choice.Kind));
        foreach (var choice in kept.Where(choice => choice.Channels != wanted[choice.Kind]))
            (choice.Channels, choice.ChosenAt) = (wanted[choice.Kind], now);
        foreach (var (kind, ways) in wanted.Where(one => !kept.Exists(choice => choice.Kind == one.Key)))
        {
            var choice = new NoticeChoice { PersonId = personId, Kind = kind, Channels = ways, ChosenAt = now };
            db.Add(choice);
            kept.Add(choice);
        }
        return kept;
    }

    private async Task<Person?> PersonAsync(Guid id, CancellationToken cancellation) =>
        caller.PersonId == id || caller.Role == Role.Consultant
            ? await db.People.SingleOrDefaultAsync(person => person.Id == id, cancellation)
            : null;

    private Task<NoticeSettings?> SettingsAsync(Guid id, CancellationToken cancellation) =>
        db.NoticeSettings.SingleOrDefaultAsync(row => row.PersonId == id, cancellation);

    private Task<List<NoticeChoice>> ChoicesAsync(Guid id, CancellationToken cancellation) =>
        db.NoticeChoices.Where(choice => choice.PersonId == id).OrderBy(choice => choice.Kind)
            .ToListAsync(cancellation);

    /// <summary>In the form that receivers of signed webhooks know: 'whsec_' and the key in base64.</summary>
    private static string NewSecret() => $"whsec_{Convert.ToBase64String(RandomNumberGenerator.GetBytes(KeyBytes))}";
}
