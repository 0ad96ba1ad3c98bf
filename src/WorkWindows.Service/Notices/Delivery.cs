using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Unsubscribe;
using WorkWindows.Service.Notices.Webhooks;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Hands a message over in the way that it is written for.</summary>
public sealed class Delivery(
    WorkWindowsDb db, WebhookTransport webhooks, UnsubscribeLink unsubscribe, IOptions<MailOptions> mail,
    IOptions<WebhookOptions> webhook)
{
    /// <returns>How long it may take to hand a message over.</returns>
    public Duration Longest(Message message) => Duration.FromSeconds(
        message.Channel == NoticeChannels.Webhook ? webhook.Value.TimeoutSeconds : mail.Value.TimeoutSeconds);

    /// <param name="message">A tracked row.</param>
    /// <param name="sender">Who speaks.</param>
    /// <param name="session">Where mails go.</param>
    /// <returns>Null when it was taken over; else why there is nobody any more to take it.</returns>
    /// <exception cref="MailNotSentException">It was not taken over, or nobody can say whether it was.</exception>
    public async Task<string?> SendAsync(Message message, Organization sender, IMailSession session)
    {
        if (message.Channel == NoticeChannels.Webhook)
            return await SendToWebhookAsync(message);
        await session.SendAsync(MailWriter.Of(
            message, sender.Name, mail.Value.SenderAddress, unsubscribe.Of(sender, message)));
        return null;
    }

    /// <remarks>A webhook that was moved since the message was written gets it at its new address.</remarks>
    private async Task<string?> SendToWebhookAsync(Message message)
    {
        var settings = await db.NoticeSettings.SingleOrDefaultAsync(row => row.PersonId == message.RecipientId);
        if (settings is not { WebhookAddress: { } address, WebhookSecret: { } secret })
            return "the recipient has no webhook any more";
        message.ToAddress = address;
        if (await webhooks.SendAsync(message, new(address, secret)))
            return null;
        (settings.WebhookAddress, settings.WebhookSecret) = (null, null);
        return "the webhook says that it is gone, and is switched off";
    }
}
