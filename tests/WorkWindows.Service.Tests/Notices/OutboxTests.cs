using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using MimeKit;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class OutboxTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task SendDueAsync_SendsEachMessageOnce()
    {
        var land = await MessagesAsync(3);
        await using var server = new MailServer(MailServer.FreePort());
        using var host = Worker(server.Port);

        await host.SendAsync(land.Organization);
        await host.SendAsync(land.Organization);

        server.Received.Select(mail => mail.Subject).Order().ShouldBe(["Message 0", "Message 1", "Message 2"]);
        (await RowsAsync(land)).ShouldAllBe(row => row.SentAt == Now && row.LeasedUntil == null && row.Attempts == 1);
        server.Sessions.ShouldBe(1);
    }

    [Fact]
    public async Task SendDueAsync_SendsEachMessageOnce_WhenTwoWorkersAreAtIt()
    {
        var land = await MessagesAsync(20);
        await using var server = new MailServer(MailServer.FreePort());
        using var one = Worker(server.Port);
        using var other = Worker(server.Port);

        await Task.WhenAll(Task.Run(() => one.SendAsync(land.Organization)), Task.Run(() => other.SendAsync(land.Organization)));

        server.Received.Select(mail => mail.MessageId).Distinct().Count().ShouldBe(20);
        server.Received.Count.ShouldBe(20);
    }

    [Fact]
    public async Task SendAllAsync_SendsForEveryOrganization()
    {
        var (one, other) = (await MessagesAsync(1), await MessagesAsync(1));
        await using var server = new MailServer(MailServer.FreePort());
        using var host = Worker(server.Port);

        await host.SendAllAsync();

        (await RowsAsync(one)).Concat(await RowsAsync(other)).ShouldAllBe(row => row.SentAt == Now);
    }

    [Fact]
    public async Task SendDueAsync_KeepsTheMessageAndSendsItLater_WhenTheServerIsDown()
    {
        var land = await MessagesAsync(2);
        var port = MailServer.FreePort();
        using var host = Worker(port);

        await host.SendAsync(land.Organization);
        var waiting = await RowsAsync(land);
        await using var server = new MailServer(port);
        _clock.AdvanceMinutes(1);
        await host.SendAsync(land.Organization);

        waiting[0].LastError.ShouldBe("SMTP server not reached: ConnectionRefused");
        waiting[0].NextAttemptAt.ShouldBe(Now + Duration.FromMinutes(1));
        waiting[1].Attempts.ShouldBe(0, "the second message is not tried while the server is down");
        server.Received.Select(mail => mail.Subject).Order().ShouldBe(["Message 0", "Message 1"]);
    }

    [Fact]
    public async Task SendDueAsync_GoesOnToTheNext_WhenTheServerRefusesARecipient()
    {
        var land = await MessagesAsync(2);
        await using var server = new MailServer(MailServer.FreePort(), refuses: "person0@example.org");
        using var host = Worker(server.Port);

        await host.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem().Subject.ShouldBe("Message 1");
        var refused = (await RowsAsync(land))[0];
        refused.LastError.ShouldBe("RecipientNotAccepted, SMTP status 550");
        host.Logs.Lines.ShouldAllBe(line => !line.Contains('@'));
    }

    [Fact]
    public async Task SendDueAsync_WaitsLongerEachTime_AndGivesUpAfterTenAttempts()
    {
        var land = await MessagesAsync(1);
        using var host = new NoticeHost(database, _clock, new Failing(new MailNotSentException("refused", false)));
        var waits = new List<double>();

        for (var attempt = 1; attempt <= Outbox.MaxAttempts; attempt++)
        {
            await host.SendAsync(land.Organization);
            var row = (await RowsAsync(land))[0];
            row.Attempts.ShouldBe(attempt);
            waits.Add((row.NextAttemptAt - _clock.GetCurrentInstant()).TotalMinutes);
            _clock.Reset(row.NextAttemptAt);
        }
        await host.SendAsync(land.Organization);

        waits.ShouldBe([1, 5, 15, 60, 60, 60, 60, 60, 60, 60]);
        var dead = (await RowsAsync(land))[0];
        dead.DeadAt.ShouldNotBeNull();
        dead.Attempts.ShouldBe(Outbox.MaxAttempts);
    }

    [Fact]
    public async Task SendDueAsync_NeverGivesUp_WhileTheServerIsDown()
    {
        var land = await MessagesAsync(1);
        using var host = new NoticeHost(database, _clock, new Failing(new MailNotSentException("down", true)));

        for (var attempt = 0; attempt < 3 * Outbox.MaxAttempts; attempt++)
        {
            await host.SendAsync(land.Organization);
            _clock.Advance(Duration.FromMinutes(1));
        }

        var row = (await RowsAsync(land))[0];
        row.DeadAt.ShouldBeNull();
        row.Attempts.ShouldBe(0);
        await using var server = new MailServer(MailServer.FreePort());
        using var later = Worker(server.Port);
        await later.SendAsync(land.Organization);
        (await RowsAsync(land))[0].SentAt.ShouldNotBeNull();
    }

    [Fact]
    public async Task SendDueAsync_GivesUp_WhenTheServerTakesTheMailEachTimeAndNeverSaysSo()
    {
        var land = await MessagesAsync(1);
        await using var server = new MailServer(MailServer.FreePort(), cuts: true);
        using var host = Worker(server.Port);

        for (var attempt = 0; attempt < 2 * Outbox.MaxAttempts; attempt++)
        {
            await host.SendAsync(land.Organization);
            _clock.Advance(Duration.FromHours(1));
        }

        server.Received.Count.ShouldBe(Outbox.MaxAttempts);
        (await RowsAsync(land))[0].GivenUp.ShouldBe(GivenUp.Failed);
    }

    [Fact]
    public async Task SendDueAsync_SendsWhatADeadWorkerHeld_WhenItsLeaseHasEnded()
    {
        var land = await MessagesAsync(1);
        await using var server = new MailServer(MailServer.FreePort());
        using var dying = new NoticeHost(database, _clock, new Failing(new InvalidOperationException("Killed before DATA.")));
        using var next = Worker(server.Port);
        await Should.ThrowAsync<InvalidOperationException>(() => dying.SendAsync(land.Organization));

        _clock.Advance(Outbox.Lease - Duration.FromSeconds(1));
        await next.SendAsync(land.Organization);
        server.Received.ShouldBeEmpty();
        _clock.AdvanceSeconds(1);
        await next.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem().MessageId.ShouldBe((await RowsAsync(land))[0].MessageId);
    }

    [Fact]
    public async Task SendDueAsync_GivesUp_WhenAMessageKillsEveryWorker()
    {
        var land = await MessagesAsync(1);
        using var host = new NoticeHost(database, _clock, new Failing(new InvalidOperationException("Killed.")));
        for (var attempt = 0; attempt < Outbox.MaxAttempts; attempt++)
        {
            await Should.ThrowAsync<InvalidOperationException>(() => host.SendAsync(land.Organization));
            _clock.Advance(Outbox.Lease);
        }

        await host.SendAsync(land.Organization);

        (await RowsAsync(land))[0].DeadAt.ShouldNotBeNull();
    }

    [Fact]
    public async Task SendDueAsync_SendsWhatKeepsPeopleFromHarmFirst_HoweverLateItWasWritten()
    {
        string[] written =
        [
            NoticeKinds.GoodToCut, NoticeKinds.Outage, NoticeKinds.Reminder, NoticeKinds.DoNotStart,
            NoticeKinds.StopWork, NoticeKinds.TakenOver, NoticeKinds.MissedCheckIn,
        ];
        var land = await GivenLand.StoreAsync(database);
        await using (var db = land.Open())
        {
            db.Messages.AddRange(written.Select((kind, number) => NewMessage(kind, number, kind)));
            await db.SaveChangesAsync();
        }
        await using var server = new MailServer(MailServer.FreePort());
        using var host = Worker(server.Port);

        await host.SendAsync(land.Organization);

        server.Received.Select(mail => mail.Subject).ShouldBe(
        [
            NoticeKinds.MissedCheckIn, NoticeKinds.TakenOver, NoticeKinds.StopWork, NoticeKinds.DoNotStart,
            NoticeKinds.GoodToCut, NoticeKinds.Outage, NoticeKinds.Reminder,
        ]);
    }

    internal static IOptions<MailOptions> Smtp(int port) => Options.Create(new MailOptions
    {
        Host = "127.0.0.1",
        Port = port,
        UseTls = false,
        From = "notices@example.org",
    });

    private NoticeHost Worker(int port) => new(database, _clock, new SmtpTransport(Smtp(port)));

    private async Task<GivenLand> MessagesAsync(int count)
    {
        var land = await GivenLand.StoreAsync(database);
        await using var db = land.Open();
        db.Messages.AddRange(Enumerable.Range(0, count).Select(
            number => NewMessage(NoticeKinds.StopWork, number, $"Message {number}")));
        await db.SaveChangesAsync();
        return land;
    }

    internal static Message NewMessage(string kind, int number, string subject) => new()
    {
        DedupeKey = $"test:{number}",
        Kind = kind,
        ToAddress = $"person{number}@example.org",
        Subject = subject,
        TextBody = "Stop.\n",
        HtmlBody = "<p>Stop.</p>",
        MessageId = $"{Guid.NewGuid():N}@example.org",
        CreatedAt = Now + Duration.FromMilliseconds(number),
        NextAttemptAt = Now,
    };

    private static async Task<List<Message>> RowsAsync(GivenLand land)
    {
        await using var db = land.Open();
        return await db.Messages.OrderBy(message => message.CreatedAt).ToListAsync();
    }

    private sealed class Failing(Exception fault) : IMailTransport, IMailSession
    {
        public IMailSession Open() => this;

        public Task SendAsync(MimeMessage mail) => throw fault;

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
