using System.Globalization;
using System.Text.RegularExpressions;
using MimeKit;
using MimeKit.Utils;

namespace WorkWindows.Service.Notices;

/// <summary>
/// What a report of delivery says. Source: RFC 3464; RFC 3461, 4 and 6.3 for the envelope id; RFC 6522.
/// </summary>
/// <param name="MessageIds">What may be the Message-ID of the mail that it is about, without angle brackets.</param>
/// <param name="Failure">
/// The status with which delivery failed for good, such as 5.1.1; null when it has not failed.
/// </param>
internal sealed partial record DeliveryReport(IReadOnlyList<string> MessageIds, string? Failure)
{
    public const string Accepted =
        "a report of failed delivery (RFC 3464): the whole mail as message/rfc822, or its body as multipart/report";

    /// <summary>A failed delivery without a status that can be read.</summary>
    private const string Unspecified = "5.0.0";

    /// <param name="content">The mail, or its body.</param>
    /// <param name="contentType">
    /// The type of the content; null or a type that says nothing stands for a whole mail.
    /// </param>
    /// <returns>Null when it is no such report.</returns>
    public static DeliveryReport? Read(Stream content, string? contentType)
    {
        try
        {
            var isBody = contentType?.StartsWith("multipart/report", StringComparison.OrdinalIgnoreCase) == true;
            var body = isBody
                ? MimeEntity.Load(ContentType.Parse(contentType!), content)
                : MimeMessage.Load(content).Body;
            var parts = Parts(body).ToList();
            return parts.OfType<MessageDeliveryStatus>().FirstOrDefault() is { StatusGroups: { Count: > 1 } groups }
                ? new([.. Names(groups[0]).Concat(parts.SelectMany(Names)).Distinct()], FailureOf(groups.Skip(1)))
                : null;
        }
        catch (Exception fault) when (fault is FormatException or ParseException)
        {
            return null;
        }
    }

    private static IEnumerable<MimeEntity> Parts(MimeEntity? entity) => entity switch
    {
        null => [],
        Multipart parts => parts.SelectMany(Parts),
        _ => [entity],
    };

    private static IEnumerable<string> Names(HeaderList fields)
    {
        if (fields["Original-Envelope-Id"] is { } envelope)
            yield return EscapedByte().Replace(envelope.Trim(), match => $"{(char)Hex(match.Groups[1].Value)}");
        if (fields["Original-Message-ID"] is { } named)
        {
            foreach (var id in MimeUtils.EnumerateReferences(named))
                yield return id;
        }
    }

    /// <summary>The mail that came back, or its headers alone.</summary>
    private static IEnumerable<string> Names(MimeEntity part)
    {
        var id = part switch
        {
            MessagePart { Message: { } returned } => returned.MessageId,
            TextPart { ContentType.MimeType: "text/rfc822-headers", Content: { } headers } =>
                HeaderList.Load(headers.Open())[HeaderId.MessageId] is { } field
                    ? MimeUtils.EnumerateReferences(field).FirstOrDefault()
                    : null,
            _ => null,
        };
        return id is null ? [] : [id];
    }

    /// <summary>Delayed, relayed and delivered mails are not lost (RFC 3464, 2.3.3).</summary>
    private static string? FailureOf(IEnumerable<HeaderList> recipients) => recipients
        .Where(fields => Word(fields["Action"]).Equals("failed", StringComparison.OrdinalIgnoreCase))
        .Select(fields => Status().IsMatch(Word(fields["Status"])) ? Word(fields["Status"]) : Unspecified)
        .FirstOrDefault();

    private static string Word(string? field) => field?.Trim().Split(' ', '\t', '(')[0] ?? "";

    private static int Hex(string digits) => int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    /// <summary>A byte as xtext writes it (RFC 3461, 4).</summary>
    [GeneratedRegex(@"\+([0-9A-F]{2})")]
    private static partial Regex EscapedByte();

    [GeneratedRegex(@"^[245]\.\d{1,3}\.\d{1,3}$")]
    private static partial Regex Status();
}
