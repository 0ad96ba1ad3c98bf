using Shouldly;
using WorkWindows.Service.Notices;

namespace WorkWindows.Service.Tests.Notices;

public sealed class DeliveryWordsTests
{
    [Theory]
    [InlineData("MessageNotAccepted, SMTP status 554", "The mail server refused the message (status 554).")]
    [InlineData("RecipientNotAccepted, SMTP status 550", "The mail server refused the address (status 550).")]
    [InlineData("SMTP server not reached: ConnectionRefused", "The mail server could not be reached (ConnectionRefused).")]
    [InlineData("SMTP server too slow", "The mail server took too long.")]
    [InlineData("no such mailbox, status 5.1.1", "There is no such mailbox (status 5.1.1).")]
    [InlineData("came back, status 5.1.1", "It came back (status 5.1.1).")]
    [InlineData("superseded: its days are over or not good any more", "Its days are over, or not good any more.")]
    [InlineData("superseded: the crew has been heard from", "The crew was heard from before it left.")]
    [InlineData("HTTP status 500", "The webhook answered with an error (HTTP status 500).")]
    [InlineData("webhook too slow", "The webhook took too long.")]
    [InlineData("the webhook's host is on a private network", "The webhook's host is on a private network.")]
    public void Of_SaysWhatHappened_WithTheCodeLast(string reason, string words) =>
        DeliveryWords.Of(reason).ShouldBe(words);
}
