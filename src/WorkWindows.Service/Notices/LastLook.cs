using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <param name="Why">Why, for programs.</param>
/// <param name="Reason">Why, without anything personal.</param>
public sealed record Hindrance(GivenUp Why, string Reason);

/// <summary>What may have come up since a message was written, looked at just before it leaves.</summary>
public sealed class LastLook(WorkWindowsDb db)
{
    /// <returns>
    /// Why the message is not to be sent, or null. Calls for a crew are tried whatever is known of the address: an
    /// attempt costs nothing, and a mailbox may be back.
    /// </returns>
    public async Task<Hindrance?> HindranceAsync(Message message)
    {
        if (message.Channel != NoticeChannels.Mail || message.Kind is NoticeKinds.MissedCheckIn or NoticeKinds.CrewFine)
            return null;
        if (NoticeKinds.Find(message.Kind)?.MayBeTurnedOff == true && await IsTurnedOffAsync(message))
            return new(GivenUp.TurnedOff, "turned off by the recipient");
        var address = BouncingAddress.Normalize(message.ToAddress);
        return await db.BouncingAddresses.Where(bounce => bounce.Address == address).Select(bounce => bounce.Code)
            .SingleOrDefaultAsync() is { } code
            ? new(GivenUp.AddressBounces, $"no such mailbox, status {code}")
            : null;
    }

    private async Task<bool> IsTurnedOffAsync(Message message) =>
        await db.NoticeChoices.AsNoTracking()
            .SingleOrDefaultAsync(choice => choice.PersonId == message.RecipientId && choice.Kind == message.Kind)
            is { } choice && !choice.Channels.HasFlag(NoticeChannels.Mail);
}
