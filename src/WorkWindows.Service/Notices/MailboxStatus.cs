namespace WorkWindows.Service.Notices;

/// <summary>
/// Whether a status says that a mailbox does not exist or takes no mail any more, so that trying again is of no use.
/// Source: RFC 5321, 4.2.3 (550, 551, 553); RFC 3463, 3.2 and 3.3 (5.1.x addressing, 5.2.1 mailbox disabled). That
/// 5.0.0 counts too is common practice, no source: many servers say no more of an unknown mailbox.
/// </summary>
public static class MailboxStatus
{
    /// <summary>Of the address (RFC 3463, 3.2), but 5.1.7 and 5.1.8, which speak of the sender's.</summary>
    private static readonly HashSet<string> Gone =
        ["5.0.0", "5.1.0", "5.1.1", "5.1.2", "5.1.3", "5.1.4", "5.1.6", "5.1.10", "5.2.1"];

    /// <param name="enhanced">A status of RFC 3463 such as 5.1.1.</param>
    public static bool IsGone(string enhanced) => Gone.Contains(enhanced);

    /// <param name="reply">The reply to RCPT, 200 to 599.</param>
    /// <param name="text">
    /// Its text, which begins with the status of RFC 3463 where the server knows it. A refusal for reasons of policy
    /// (5.7.x) has the same number as one of an unknown mailbox, and says nothing of the mailbox.
    /// </param>
    /// <returns>The status, or null where it says no such thing.</returns>
    public static string? OfRefusal(int reply, string text)
    {
        var first = text.Split(' ', 2)[0];
        if (IsEnhanced(first))
            return IsGone(first) ? first : null;
        return reply is 550 or 551 or 553 ? $"{reply}" : null;
    }

    private static bool IsEnhanced(string word) =>
        word.Split('.') is { Length: 3 } parts
        && parts.All(part => part.Length is > 0 and < 4 && part.All(char.IsAsciiDigit));
}
