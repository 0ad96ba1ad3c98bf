namespace WorkWindows.Service.Notices;

/// <summary>What hindered a message, for people: rows keep it as kinds and codes.</summary>
public static class DeliveryWords
{
    /// <summary>What a reason begins with, and how that is said; what follows it is the code.</summary>
    private static readonly (string Begins, string Says)[] Known =
    [
        ("RecipientNotAccepted, SMTP status ", "The mail server refused the address"),
        ("SenderNotAccepted, SMTP status ", "The mail server takes no mail from our address"),
        ("MessageNotAccepted, SMTP status ", "The mail server refused the message"),
        ("UnexpectedStatusCode, SMTP status ", "The mail server answered with an error"),
        ("SMTP server not reached: ", "The mail server could not be reached"),
        ("SMTP server too slow", "The mail server took too long"),
        ("AuthenticationException", "The mail server did not let the service sign in"),
        ("SslHandshakeException", "No safe connection to the mail server could be made"),
        ("no such mailbox, status ", "There is no such mailbox"),
        ("came back, status ", "It came back"),
        ("no worker has survived sending it", "The service broke off each time that it sent it"),
        ("superseded: the crew has been heard from", "The crew was heard from before it left"),
        ("superseded: ", "Its days are over, or not good any more"),
        ("turned off by the recipient", "Its reader has turned such messages off"),
        ("the recipient has no webhook any more", "There is no webhook any more"),
        ("HTTP status ", "The webhook answered with an error"),
        ("webhook not reached: ", "The webhook could not be reached"),
        ("webhook too slow", "The webhook took too long"),
        ("outbox folder not writable: ", "The folder that mails are kept in cannot be written"),
    ];

    /// <returns>A sentence, with the code at its end where there is one; an unknown reason as it is kept.</returns>
    public static string Of(string reason)
    {
        foreach (var (begins, says) in Known)
        {
            if (!reason.StartsWith(begins, StringComparison.Ordinal))
                continue;
            var code = begins.StartsWith("superseded", StringComparison.Ordinal) ? "" : reason[begins.Length..];
            return code == "" ? $"{says}." : $"{says} ({Unit(begins)}{code}).";
        }
        return $"{char.ToUpperInvariant(reason[0])}{reason[1..].TrimEnd('.')}.";
    }

    /// <summary>A number alone says nothing.</summary>
    private static string Unit(string begins) => begins.StartsWith("HTTP", StringComparison.Ordinal) ? "HTTP status "
        : begins.EndsWith("status ", StringComparison.Ordinal) ? "status "
        : "";
}
