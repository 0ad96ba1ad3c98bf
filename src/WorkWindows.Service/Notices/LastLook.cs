using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <param name="Why">Why, for programs; null where the message only waits.</param>
/// <param name="Reason">Why, without anything personal.</param>
/// <param name="Until">Until when it waits; null where it is not sent at all.</param>
public sealed record Hindrance(GivenUp? Why, string Reason, Instant? Until = null);

/// <summary>What may have come up since a message was written, looked at just before it leaves.</summary>
public sealed class LastLook(WorkWindowsDb db)
{
    /// <param name="message">A tracked row; a mail is addressed to where its reader is reached now.</param>
    /// <param name="sender">Whose date decides whether days are over, where their reader has no zone.</param>
    /// <param name="now">The time of sending.</param>
    /// <returns>
    /// Why the message is not to be sent now, or null. Calls for a crew are tried whatever is known of the address: an
    /// attempt costs nothing, and a mailbox may be back.
    /// </returns>
    public async Task<Hindrance?> HindranceAsync(Message message, Organization sender, Instant now)
    {
        var isMail = message.Channel == NoticeChannels.Mail;
        var reader = message.RecipientId is { } person ? await ReaderAsync(person, message.Kind) : null;
        if (isMail && reader?.Address is { } address)
            message.ToAddress = address;
        if (message.Kind == NoticeKinds.MissedCheckIn && await IsHeardFromAsync(message))
            return new(GivenUp.Superseded, "superseded: the crew has been heard from");
        if (message.Kind is NoticeKinds.MissedCheckIn or NoticeKinds.CrewFine)
            return null;
        if (NoticeKinds.Find(message.Kind) is { } kind && reader is not null)
        {
            if (kind.MayBeTurnedOff && reader.Chosen is { } ways && !ways.HasFlag(message.Channel))
                return new(GivenUp.TurnedOff, "turned off by the recipient");
            var wishes = Wishes.Of(reader.Settings, [], DateTimeZoneProviders.Tzdb[sender.TimeZone]);
            if (await IsOverAsync(message, kind, now.InZone(wishes.Zone).Date))
                return new(GivenUp.Superseded, "superseded: its days are over or not good any more");
            if (isMail && wishes.Earliest(kind, now) is var earliest && earliest > now)
                return new(null, "quiet hours", earliest);
        }
        return isMail ? await BounceAsync(message.ToAddress) : null;
    }

    private sealed record Reader(string? Address, NoticeSettings? Settings, NoticeChannels? Chosen);

    private Task<Reader?> ReaderAsync(Guid id, string kind) => db.People.AsNoTracking().Where(person => person.Id == id)
        .Select(person => new Reader(
            person.Email, db.NoticeSettings.SingleOrDefault(row => row.PersonId == id),
            db.NoticeChoices.Where(choice => choice.PersonId == id && choice.Kind == kind)
                .Select(choice => (NoticeChannels?)choice.Channels).SingleOrDefault()))
        .SingleOrDefaultAsync();

    /// <summary>Whether all days that a message is of have passed, or were taken back.</summary>
    private async Task<bool> IsOverAsync(Message message, NoticeKind kind, LocalDate today)
    {
        var key = Message.KeyOf(message.DedupeKey);
        if (Reminders.DayOf(key) < today)
            return true;
        if (!kind.HasDays)
            return false;
        if (message.IsReplaced)
            return true;
        var windows = await db.Announcements.AsNoTracking().Where(window => window.MessageKey == key)
            .Select(window => new { window.LastDay, window.StoppedAt }).ToListAsync();
        return windows.Count > 0
            && windows.TrueForAll(window => window.StoppedAt is not null || window.LastDay < today);
    }

    /// <summary>
    /// A call that comes after the word that the crew is fine would have somebody set out for nothing.
    /// </summary>
    private async Task<bool> IsHeardFromAsync(Message message) =>
        AlarmCall.MissedOf(Message.KeyOf(message.DedupeKey)) is { } id
        && await db.MissedCheckIns.AnyAsync(missed => missed.Id == id && missed.ClearedAt != null);

    private async Task<Hindrance?> BounceAsync(string toAddress)
    {
        var address = BouncingAddress.Normalize(toAddress);
        return await db.BouncingAddresses.Where(bounce => bounce.Address == address).Select(bounce => bounce.Code)
            .SingleOrDefaultAsync() is { } code
            ? new(GivenUp.AddressBounces, $"no such mailbox, status {code}")
            : null;
    }
}
