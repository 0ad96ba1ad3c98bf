using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>What has come up between the writing of a message and its leaving.</summary>
public sealed class LastLookTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly Duration Day = Duration.FromDays(1);

    private readonly FakeClock _clock = new(Now);

    [Theory]
    [InlineData(NoticeKinds.FollowUp, 0)]
    [InlineData(NoticeKinds.StopWork, 1)]  // what takes a day back passes quiet hours
    public async Task LateMail_WaitsForTheEndOfQuietHours(string kind, int sent)
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(land, new NoticeSettings
        {
            PersonId = land.Owner,
            QuietFrom = new(3, 0),
            QuietUntil = new(7, 0),
        });
        await AddAsync(land, NewMessage(kind, "late", land.Owner));
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);

        server.Received.Count.ShouldBe(sent);
        if (sent > 0)
            return;
        var row = await RowAsync(land);
        (row.NextAttemptAt, row.Attempts, row.LeasedUntil).ShouldBe((Now + Duration.FromHours(3), 0, null));
        _clock.AdvanceHours(3);
        await worker.SendAsync(land.Organization);
        server.Received.Count.ShouldBe(1);
    }

    [Fact]
    public async Task Mail_GoesToTheAddressThatThePersonHasNow()
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(land, NewMessage(NoticeKinds.StopWork, "one", land.Owner));
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);
        await using var db = land.Open();
        var address = await db.People.Where(person => person.Id == land.Owner).Select(person => person.Email)
            .SingleAsync();

        await worker.SendAsync(land.Organization);

        server.Recipients.ShouldBe([address]);
        (await RowAsync(land)).ToAddress.ShouldBe(address);
    }

    [Theory]
    [InlineData(false, 3, 0)]  // its last day is over
    [InlineData(true, 0, 0)]   // its days were taken back
    [InlineData(false, 1, 1)]  // its last day is today
    public async Task Offer_IsNotSent_WhenNoneOfItsDaysStands(bool isStopped, int daysLate, int sent)
    {
        var land = await GivenLand.StoreAsync(database);
        await using (var db = land.Open())
        {
            db.Add(NewMessage(NoticeKinds.GoodToCut, "offer", land.Owner));
            db.Add(new Announcement
            {
                TaskId = await db.PlannedTasks.Select(task => task.Id).SingleAsync(),
                PersonId = land.Owner,
                FirstDay = Today,
                LastDay = Today.PlusDays(1),
                MessageKey = "offer",
                AnnouncedAt = Now,
                StoppedAt = isStopped ? Now : null,
            });
            await db.SaveChangesAsync();
        }
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);
        _clock.Advance(Day * daysLate);

        await worker.SendAsync(land.Organization);

        server.Received.Count.ShouldBe(sent);
        (await RowAsync(land)).GivenUp.ShouldBe(sent == 0 ? GivenUp.Superseded : null);
    }

    [Theory]
    [InlineData(NoticeKinds.Reminder)]
    [InlineData(NoticeKinds.DoNotStart)]
    public async Task WordOfOneDay_IsNotSent_WhenThatIsOver(string kind)
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(land, NewMessage(
            kind, Reminders.KeyOf(TaskId, Today.PlusDays(1), land.Lead), land.Lead));
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);
        _clock.Advance(Day * 2);

        await worker.SendAsync(land.Organization);

        server.Received.ShouldBeEmpty();
        (await RowAsync(land)).GivenUp.ShouldBe(GivenUp.Superseded);
    }

    [Fact]
    public async Task Webhook_IsNotCalled_WhenItsOwnerTurnsTheKindOff()
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(land, NewMessage(NoticeKinds.FollowUp, "one", land.Owner, NoticeChannels.Webhook));
        await AddAsync(land, new NoticeChoice
        {
            PersonId = land.Owner,
            Kind = NoticeKinds.FollowUp,
            Channels = NoticeChannels.Mail,
            ChosenAt = Now,
        });
        await AddAsync(land, new NoticeSettings
        {
            PersonId = land.Owner,
            WebhookAddress = "https://127.0.0.1:1/",
            WebhookSecret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw",
        });
        using var worker = new NoticeHost(database, _clock);

        await worker.SendAsync(land.Organization);

        var row = await RowAsync(land);
        (row.GivenUp, row.LastError).ShouldBe((GivenUp.TurnedOff, "turned off by the recipient"));
    }

    private NoticeHost Worker(int port) => new(database, _clock, new SmtpTransport(OutboxTests.Smtp(port)));

    private static async Task AddAsync(GivenLand land, object row)
    {
        await using var db = land.Open();
        db.Add(row);
        await db.SaveChangesAsync();
    }

    private static async Task<Message> RowAsync(GivenLand land)
    {
        await using var db = land.Open();
        return await db.Messages.SingleAsync();
    }

    private static Message NewMessage(
        string kind, string key, Guid person, NoticeChannels channel = NoticeChannels.Mail) => new()
        {
            DedupeKey = key,
            Kind = kind,
            Channel = channel,
            RecipientId = person,
            ToAddress = "before@example.org",
            Subject = "Late",
            TextBody = "Late.\n",
            HtmlBody = "<p>Late.</p>",
            MessageId = $"{Guid.NewGuid():N}@example.org",
            CreatedAt = Now,
            NextAttemptAt = Now,
        };
}
