using System.Text;
using System.Text.Encodings.Web;
using MimeKit;
using MimeKit.Text;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>Makes the mail of a message: text and HTML as alternatives, the calendar attached.</summary>
public static class MailWriter
{
    private const string CalendarName = "workwindows.ics";

    private const string TurnOff = "You do not want mails of this kind? Turn them off here:";
    private const string EndOfBody = "</body>";

    /// <param name="message">What to say.</param>
    /// <param name="senderName">The organization.</param>
    /// <param name="senderAddress">Its mail address.</param>
    /// <param name="unsubscribe">
    /// Where the reader turns mails of the kind off, also without opening it (RFC 8058); null where that is not
    /// offered.
    /// </param>
    /// <exception cref="MailNotSentException">The recipient's address cannot be read.</exception>
    public static MimeMessage Of(
        Message message, string senderName, string senderAddress, string? unsubscribe = null)
    {
        var mail = new MimeMessage
        {
            MessageId = message.MessageId,
            Date = message.CreatedAt.ToDateTimeOffset(),
            Subject = message.Subject,
            Body = Body(message, unsubscribe),
        };
        mail.From.Add(new MailboxAddress(senderName, senderAddress));
        mail.To.Add(To(message.ToAddress));
        // RFC 3834: nobody's out-of-office note should answer.
        mail.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        if (unsubscribe is not null)
        {
            mail.Headers.Add(HeaderId.ListUnsubscribe, $"<{unsubscribe}>");
            mail.Headers.Add(HeaderId.ListUnsubscribePost, "List-Unsubscribe=One-Click");
        }
        mail.Prepare(EncodingConstraint.SevenBit);
        return mail;
    }

    private static MimeEntity Body(Message message, string? unsubscribe)
    {
        var alternatives = new MultipartAlternative
        {
            new TextPart(TextFormat.Plain) { Text = Lines(message.TextBody + TextEnding(unsubscribe)) },
            new TextPart(TextFormat.Html) { Text = Lines(WithEnding(message.HtmlBody, unsubscribe)) },
        };
        return message.Calendar is null
            ? alternatives
            : new Multipart("mixed") { alternatives, Calendar(message.Calendar) };
    }

    private static string TextEnding(string? unsubscribe) =>
        unsubscribe is null ? "" : $"\n{TurnOff}\n{unsubscribe}\n";

    private static string WithEnding(string html, string? unsubscribe)
    {
        if (unsubscribe is null)
            return html;
        var address = HtmlEncoder.Default.Encode(unsubscribe);
        var ending = $"<p style=\"margin:0 0 12px\">{TurnOff}<br><a href=\"{address}\">{address}</a></p>\n";
        var end = html.LastIndexOf(EndOfBody, StringComparison.Ordinal);
        return end < 0 ? html + ending : html.Insert(end, ending);
    }

    /// <summary>Text of a mail ends its lines with CRLF, also where it is encoded (RFC 2045, 6.8).</summary>
    private static string Lines(string text) => text.ReplaceLineEndings("\r\n");

    private static MimePart Calendar(string text)
    {
        var part = new MimePart("text", "calendar")
        {
            Content = new MimeContent(new MemoryStream(Encoding.UTF8.GetBytes(text))),
            ContentDisposition = new ContentDisposition(ContentDisposition.Attachment),
            ContentTransferEncoding = ContentEncoding.Base64,
            FileName = CalendarName,
        };
        part.ContentType.Charset = "utf-8";
        part.ContentType.Parameters.Add("method", CalendarFile.MethodOf(text));
        return part;
    }

    private static MailboxAddress To(string address)
    {
        try
        {
            return MailboxAddress.Parse(address);
        }
        catch (ParseException fault)
        {
            throw new MailNotSentException("the recipient's address cannot be read", false, fault);
        }
    }
}
