using NodaTime;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <param name="Message">What was not delivered.</param>
/// <param name="Name">The person's name; null for somebody outside of the organization.</param>
/// <param name="Phone">Their telephone, or null.</param>
/// <param name="Bounce">The status with which the address bounces; null for another cause.</param>
internal sealed record Undelivered(Message Message, string? Name, string? Phone, string? Bounce);

/// <summary>Somebody who should stop, or look for a crew, does not get the message that says so.</summary>
internal static class UnreachableNotice
{
    /// <param name="sender">Who speaks.</param>
    /// <param name="zone">The organization's zone, in which times are told.</param>
    /// <param name="lost">What reaches nobody.</param>
    /// <param name="page">The page of the messages; null when it is not known where pages are reached.</param>
    public static Notice Of(Sender sender, DateTimeZone zone, Undelivered lost, string? page)
    {
        var message = lost.Message;
        return NoticeTemplates.Fill("unreachable", new
        {
            Name = lost.Name ?? message.ToAddress,
            Why = lost.Bounce is { } code
                ? $"There is no mailbox {message.ToAddress}, says its mail server (status {code})."
                : $"The message to {message.ToAddress} was given up. {DeliveryWords.Of(message.LastError!)}",
            message.Subject,
            Written = MailDays.Of(message.CreatedAt, zone),
            Phone = lost.Phone ?? "",
            Bounces = lost.Bounce is not null,
            Page = page ?? "",
            Sender = sender,
        });
    }
}
