using Shouldly;
using WorkWindows.Service.Notices;

namespace WorkWindows.Service.Tests.Notices;

public sealed class MailboxStatusTests
{
    /// <summary>Replies as RFC 5321 (4.2.3, appendix D.2) and RFC 3463 (3.2, 3.3, 3.8) have them.</summary>
    [Theory]
    [InlineData(550, "No such user here", "550")]
    [InlineData(551, "User not local; please try <forward@example.net>", "551")]
    [InlineData(553, "Mailbox name not allowed", "553")]
    [InlineData(550, "5.1.1 <gone@example.org>: user unknown", "5.1.1")]
    [InlineData(550, "5.1.10 Recipient address has a null MX", "5.1.10")]
    [InlineData(550, "5.2.1 The account is disabled", "5.2.1")]
    [InlineData(550, "5.0.0 Mailbox unknown", "5.0.0")]
    [InlineData(554, "5.1.2 Host not found", "5.1.2")]
    [InlineData(550, "5.7.1 Relaying denied", null)]
    [InlineData(550, "5.1.8 Bad sender's system address", null)]
    [InlineData(552, "5.2.2 Mailbox full", null)]
    [InlineData(552, "Exceeded storage allocation", null)]
    [InlineData(554, "Transaction failed", null)]
    [InlineData(450, "4.2.1 Mailbox disabled for now", null)]
    [InlineData(450, "Mailbox busy", null)]
    [InlineData(530, "5.7.0 Authentication required", null)]
    public void OfRefusal_TellsAnUnknownMailboxFromAllElse(int reply, string text, string? status) =>
        MailboxStatus.OfRefusal(reply, text).ShouldBe(status);
}
