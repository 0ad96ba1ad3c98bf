using System.Text;
using MimeKit;
using MimeKit.Text;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>Makes the mail of a message: text and HTML as alternatives, the calendar attached.</summary>
public static class MailWriter
{
    private const string CalendarName = "workwindows.ics";

    /// <exception cref="MailNotSentException">The recipient's address cannot be read.</exception>
    public static MimeMessage Of(Message message, string senderName, string senderAddress)
    {
        var mail = new MimeMessage
        {
            MessageId = message.MessageId,
            Date = message.CreatedAt.ToDateTimeOffset(),
            Subject = message.Subject,
            Body = Body(message),
        };
        mail.From.Add(new MailboxAddress(senderName, senderAddress));
        mail.To.Add(To(message.ToAddress));
        // RFC 3834: nobody's out-of-office note should answer.
        mail.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        mail.Prepare(EncodingConstraint.SevenBit);
        return mail;
    }

    private static MimeEntity Body(Message message)
    {
        var alternatives = new MultipartAlternative
        {
            new TextPart(TextFormat.Plain) { Text = Lines(message.TextBody) },
            new TextPart(TextFormat.Html) { Text = Lines(message.HtmlBody) },
        };
        return message.Calendar is null
            ? alternatives
            : new Multipart("mixed") { alternatives, Calendar(message.Calendar) };
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
