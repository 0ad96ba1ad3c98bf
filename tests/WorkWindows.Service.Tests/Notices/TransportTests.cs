using System.Text;
using MimeKit;
using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class TransportTests
{
    private const string Calendar =
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test\r\nMETHOD:CANCEL\r\nEND:VCALENDAR\r\n";

    [Fact]
    public async Task Smtp_DeliversTextHtmlAndCalendar()
    {
        await using var server = new MailServer(MailServer.FreePort());

        await using var session = Open(server);
        await session.SendAsync(Mail(Calendar));

        var mail = server.Received.ShouldHaveSingleItem();
        mail.Subject.ShouldBe("Stop work: Cedar Hollow, Mon 2 – Tue 3 Feb");
        mail.MessageId.ShouldBe("one@example.org");
        mail.From.ToString().ShouldBe("\"Quiet Ridge\" <notices@example.org>");
        mail.To.ToString().ShouldBe("nell@example.org");
        mail.Date.ShouldBe(Now.ToDateTimeOffset());
        mail.Headers[HeaderId.AutoSubmitted].ShouldBe("auto-generated");
        mail.TextBody.ShouldBe("Below 20 °F.\n");
        mail.HtmlBody.ShouldBe("<p>Below 20 °F.</p>");
        var calendar = mail.Attachments.ShouldHaveSingleItem().ShouldBeOfType<TextPart>();
        calendar.ContentType.MimeType.ShouldBe("text/calendar");
        calendar.ContentType.Parameters["method"].ShouldBe("CANCEL");
        using var content = new MemoryStream();
        await calendar.Content!.DecodeToAsync(content);
        Encoding.UTF8.GetString(content.ToArray()).ShouldBe(Calendar);
    }

    [Fact]
    public async Task Smtp_DoesNotSend_WhenTlsIsAskedForAndTheServerHasNone()
    {
        await using var server = new MailServer(MailServer.FreePort());
        var options = OutboxTests.Smtp(server.Port);
        options.Value.UseTls = true;

        var fault = await Should.ThrowAsync<MailNotSentException>(() => new SmtpTransport(options).Open().SendAsync(Mail(null)));

        fault.IsServerFault.ShouldBeTrue();
        server.Received.ShouldBeEmpty();
    }

    /// <summary>Replies to RCPT (RFC 5321, 4.3.2); 451 is also what a server says that asks to be tried again later.</summary>
    [Theory]
    [InlineData(450)]
    [InlineData(451)]
    [InlineData(452)]
    [InlineData(550)]
    [InlineData(552)]
    [InlineData(554)]
    public async Task Smtp_SendsManyMailsOverOneConnection_ARefusedOneBetweenThem(int refusal)
    {
        await using var server = new MailServer(
            MailServer.FreePort(), refuses: "gone@example.org", refusal: refusal);
        await using (var session = Open(server))
        {
            await session.SendAsync(Mail(null));
            var fault = await Should.ThrowAsync<MailNotSentException>(
                () => session.SendAsync(Mail(null, to: "gone@example.org")));
            await session.SendAsync(Mail(null));

            fault.IsServerFault.ShouldBeFalse();
        }

        server.Received.Count.ShouldBe(2);
        server.Sessions.ShouldBe(1);
    }

    [Fact]
    public async Task Smtp_ConnectsAnew_WhenTheServerHasClosedTheConnection()
    {
        var port = MailServer.FreePort();
        await using var session = new SmtpTransport(OutboxTests.Smtp(port)).Open();
        await using (var first = new MailServer(port))
        {
            await session.SendAsync(Mail(null));
        }
        await using var second = new MailServer(port);

        await session.SendAsync(Mail(null));

        second.Received.Count.ShouldBe(1);
    }

    [Fact]
    public async Task Smtp_ConnectsAnew_WhenTheServerTakesNoMoreOverOneConnection()
    {
        await using var server = new MailServer(MailServer.FreePort(), mailsASession: 2);
        await using var session = Open(server);

        for (var number = 0; number < 5; number++)
            await session.SendAsync(Mail(null));

        server.Received.Count.ShouldBe(5);
        server.Sessions.ShouldBe(3);
    }

    [Fact]
    public async Task Folder_WritesOneFileAMessage_HoweverOftenItIsSent()
    {
        var folder = Directory.CreateTempSubdirectory("ww-outbox-");
        var outbox = new OutboxFolder(Path.Combine(folder.FullName, "outbox"));

        await outbox.SendAsync(Mail(Calendar));
        await outbox.SendAsync(Mail(Calendar));

        var file = Directory.GetFiles(folder.FullName, "*", SearchOption.AllDirectories).ShouldHaveSingleItem();
        Path.GetFileName(file).ShouldBe("one@example.org.eml");
        (await MimeMessage.LoadAsync(file)).Attachments.Count().ShouldBe(1);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Folder_KeepsTheMessage_WhenItCannotBeWritten()
    {
        var file = Path.GetTempFileName();

        var fault = await Should.ThrowAsync<MailNotSentException>(() => new OutboxFolder(file).SendAsync(Mail(null)));

        fault.Message.ShouldBe("outbox folder not writable: IOException");
        File.Delete(file);
    }

    [Fact]
    public void Writer_Refuses_WhenTheAddressCannotBeRead() =>
        Should.Throw<MailNotSentException>(() => Mail(null, to: "nobody at all")).IsServerFault.ShouldBeFalse();

    private static IMailSession Open(MailServer server) => new SmtpTransport(OutboxTests.Smtp(server.Port)).Open();

    private static MimeMessage Mail(string? calendar, string to = "nell@example.org") => MailWriter.Of(
        new Message
        {
            DedupeKey = "test",
            Kind = NoticeKinds.StopWork,
            RecipientId = Owner.Id,
            ToAddress = to,
            Subject = "Stop work: Cedar Hollow, Mon 2 – Tue 3 Feb",
            TextBody = "Below 20 °F.\n",
            HtmlBody = "<p>Below 20 °F.</p>",
            Calendar = calendar,
            MessageId = "one@example.org",
            CreatedAt = Now,
            NextAttemptAt = Now,
        },
        "Quiet Ridge", "notices@example.org");
}
