using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Safety.CheckIns;

/// <summary>The watch begins at 9:00 and is due at 10:00; calls are due from 10:15 on, every ten minutes.</summary>
public sealed class WatchRoundTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(GivenWatch.Start);

    [Fact]
    public async Task RunAsync_WritesToOneContactAfterTheOther_UntilSomebodyTakesItOver()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await RunUntilAsync(host, given, 74);
        (await given.MessagesAsync()).ShouldBe("");
        await RunUntilAsync(host, given, 75);
        (await given.MessagesAsync()).ShouldBe("missed to ada");
        await RunUntilAsync(host, given, 95);
        (await given.MessagesAsync()).ShouldBe("missed to ada, missed to neighbour, missed to ada");

        await SayAsync(host, given, async handler =>
            await handler.AcknowledgeAsync(given.Id, await CallAsync(given, place: 1), new(null, "Nell Ashby"), default));
        await RunUntilAsync(host, given, 95 + 74);
        (await given.MessagesAsync()).ShouldBe("missed to ada, missed to neighbour, missed to ada, taken-over to ada");
        var missed = (await given.ReadAsync()).Missed.ShouldHaveSingleItem();
        (missed.AcknowledgedBy, missed.AcknowledgedAt).ShouldBe(("Nell Ashby", At(95)));

        await RunUntilAsync(host, given, 95 + 75);
        (await given.MessagesAsync()).ShouldEndWith(", missed to ada", Case.Sensitive, "the watch goes on");
        (await given.ReadAsync()).Missed.Count.ShouldBe(2);
    }

    [Fact]
    public async Task TakingOver_IsToldToANamesake()
    {
        var given = await GivenWatch.StoreAsync(database, neighbourName: "Ada Birch");
        using var host = new NoticeHost(database, _clock);
        await RunUntilAsync(host, given, 85);

        await SayAsync(host, given, async handler =>
            await handler.AcknowledgeAsync(given.Id, await CallAsync(given, place: 0), new(null, "Ada Birch"), default));

        (await given.MessagesAsync()).ShouldBe("missed to ada, missed to neighbour, taken-over to neighbour");
    }

    [Fact]
    public async Task TakingOver_IsNotToldToThePersonWhoDoesIt_OnThePageOfTheCheckIns()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await RunUntilAsync(host, given, 85);

        await SayAsync(host, given, handler =>
            handler.AcknowledgeAsync(given.Id, new Signer(given.Land.Lead, "tom"), default));

        (await given.MessagesAsync()).ShouldBe("missed to ada, missed to neighbour, taken-over to neighbour");
    }

    [Fact]
    public async Task Calls_GoToTheWebhookOfAPersonToo_AndToTheirMailAlways()
    {
        var given = await GivenWatch.StoreAsync(database);
        await using (var db = given.Land.Open())
        {
            db.Add(new NoticeSettings
            {
                PersonId = given.Land.Lead,
                WebhookAddress = "https://hooks.example.org/ada",
                WebhookSecret = "whsec_MDEyMzQ1Njc4OWFiY2RlZjAxMjM0NTY3ODlhYmNkZWY=",
            });
            await db.SaveChangesAsync();
        }
        using var host = new NoticeHost(database, _clock);
        await RunUntilAsync(host, given, 85);
        await SayAsync(host, given, async handler =>
            await handler.AcknowledgeAsync(given.Id, await CallAsync(given, place: 1), new(null, "Nell Ashby"), default));
        _clock.AdvanceMinutes(1);
        await SayAsync(host, given, handler => handler.CheckInAsync(given.Id, GivenWatch.Tom, default));

        const string hook = "https://hooks";
        (await given.MessagesAsync()).ShouldBe(
            $"missed to ada, missed to {hook}, missed to neighbour, taken-over to ada, taken-over to {hook}, "
            + $"crew-fine to ada, crew-fine to {hook}, crew-fine to neighbour");
        await using var later = given.Land.Open();
        await host.SendAsync(given.Land.Organization);
        (await later.Messages.Where(row => row.Kind == NoticeKinds.MissedCheckIn).ToListAsync())
            .ShouldAllBe(row => row.GivenUp == GivenUp.Superseded, "the crew is fine, by whichever way it is told");
    }

    [Fact]
    public async Task RunAsync_WritesEachCallOnce_WhenTwoServersRunAtOnce_AndAWorkerDiesAfterStoring()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var one = new NoticeHost(database, _clock);
        using var other = new NoticeHost(database, _clock);
        using var dying = new NoticeHost(database, _clock, loseJobs: true);
        _clock.Reset(At(75));
        await Should.ThrowAsync<Exception>(() => RunAsync(dying, given));

        for (var minute = 75; minute <= 105; minute += 5)
        {
            _clock.Reset(At(minute));
            await Task.WhenAll(Task.Run(() => RunAsync(one, given)), Task.Run(() => RunAsync(other, given)));
        }

        (await given.MessagesAsync())
            .ShouldBe("missed to ada, missed to neighbour, missed to ada, missed to neighbour");
        (await given.ReadAsync()).Missed.ShouldHaveSingleItem().Calls.Select(call => call.Number).Order()
            .ShouldBe([0, 1, 2, 3]);
    }

    [Fact]
    public async Task RunAsync_StoresAllOfACallOrNothing_WhenItDiesBeforeItHasStored()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var dying = new NoticeHost(database, _clock, interceptor: new KillBeforeCommit(database.Address.Owner));
        using var next = new NoticeHost(database, _clock);
        _clock.Reset(At(75));

        await Should.ThrowAsync<Exception>(() => RunAsync(dying, given));
        (await given.ReadAsync()).Missed.ShouldBeEmpty();
        await RunAsync(next, given);

        (await given.MessagesAsync()).ShouldBe("missed to ada");
    }

    [Fact]
    public async Task RunAsync_TellsEverybodyOnce_WhenNoWorkerRanForHours()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        _clock.Reset(At(60 * 8));
        await RunAsync(host, given);

        (await given.MessagesAsync()).ShouldBe("missed to ada, missed to neighbour");
    }

    [Fact]
    public async Task RunAsync_WaitsAnIntervalAtMost_WhenTheClockIsSetBackByADay()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        var yesterday = -24 * 60;

        _clock.Reset(At(yesterday));
        await RunAsync(host, given);
        _clock.Reset(At(yesterday + 74));
        await RunAsync(host, given);
        (await given.MessagesAsync()).ShouldBe("");
        _clock.Reset(At(yesterday + 75));
        await RunAsync(host, given);

        (await given.MessagesAsync()).ShouldBe("missed to ada");
    }

    [Fact]
    public async Task CheckIn_MovesTheDueTime_AndTellsThoseWhoWereWrittenTo()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await RunUntilAsync(host, given, 30);
        await SayAsync(host, given, handler => handler.CheckInAsync(given.Id, GivenWatch.Tom, default));
        (await given.ReadAsync()).DueAt.ShouldBe(At(90));
        await RunUntilAsync(host, given, 106);
        await SayAsync(host, given, handler => handler.CheckInAsync(given.Id, GivenWatch.Tom, default));
        await RunUntilAsync(host, given, 106 + 74);

        (await given.MessagesAsync()).ShouldBe("missed to ada, crew-fine to ada");
        var watch = await given.ReadAsync();
        watch.Missed.ShouldHaveSingleItem().ClearedAt.ShouldBe(At(106));
        watch.CheckIns.Select(one => one.At).ShouldBe([At(0), At(30), At(106)]);
    }

    [Fact]
    public async Task Call_IsNotSent_WhenTheCrewIsHeardFromBeforeItLeaves()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await RunUntilAsync(host, given, 76);
        await SayAsync(host, given, handler => handler.CheckInAsync(given.Id, GivenWatch.Tom, default));

        await host.SendAsync(given.Land.Organization);

        await using var db = given.Land.Open();
        var rows = await db.Messages.OrderBy(message => message.CreatedAt).ToListAsync();
        rows.Select(row => (row.Kind, row.GivenUp, row.SentAt is not null)).ShouldBe([
            (NoticeKinds.MissedCheckIn, GivenUp.Superseded, false), (NoticeKinds.CrewFine, null, true)]);
    }

    [Fact]
    public async Task WeAreOut_EndsTheWatch_AndTellsThoseWhoWereWrittenTo()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await RunUntilAsync(host, given, 86);

        await SayAsync(host, given, handler => handler.EndAsync(given.Id, GivenWatch.Tom, default));
        await SayAsync(host, given, handler => handler.EndAsync(given.Id, GivenWatch.Tom, default));
        await RunUntilAsync(host, given, 300);

        (await given.MessagesAsync())
            .ShouldBe("missed to ada, missed to neighbour, crew-fine to ada, crew-fine to neighbour");
        (await given.ReadAsync()).EndedAt.ShouldBe(At(86));
    }

    [Fact]
    public async Task RunAsync_HandsTheCallsToTheMailServer_BeforeOtherMail()
    {
        var given = await GivenWatch.StoreAsync(database);
        await using var server = new MailServer(MailServer.FreePort());
        using var host = new NoticeHost(
            database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)),
            settings:
            [
                ("Mail:Host", "127.0.0.1"), ("Mail:From", "notices@example.org"),
                ("Site:Address", "https://woods.example.org/"),
            ]);
        await AddOtherMailAsync(given);
        await RunUntilAsync(host, given, 75);
        host.Queued.ShouldHaveSingleItem().Type.ShouldBe(typeof(OutboxJob));

        await host.SendAsync(given.Land.Organization);

        server.Received.Count.ShouldBe(2);
        var mail = server.Received.First();
        mail.Subject.ShouldBe("No check-in from the crew: Hinge cut, Cedar Hollow, North Forty");
        mail.TextBody!.ShouldContain($"https://woods.example.org/alarms/{given.Land.Organization}/");
        host.Logs.Lines.ShouldAllBe(line => !line.StartsWith("Error") && !line.Contains('@'));
    }

    [Fact]
    public async Task RunAsync_SaysLoudly_ThatNobodyIsCalled_WithoutAMailServer()
    {
        var given = await GivenWatch.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await RunUntilAsync(host, given, 77);

        host.Logs.Lines.ShouldContain(line => line.StartsWith("Error: NOBODY IS CALLED: 1 crews"));
        host.Logs.Lines.ShouldContain(line => line.StartsWith("Error: 1 CALLS FOR CREWS"));
    }

    [Fact]
    public async Task Rounds_AreStartedForEveryOrganization()
    {
        var (one, other) = (await GivenWatch.StoreAsync(database), await GivenWatch.StoreAsync(database));
        using var host = new NoticeHost(database, _clock);

        await host.InScopeAsync<WatchRounds>(rounds => rounds.StartAsync(default));

        var started = host.Queued.Where(job => job.Type == typeof(WatchRoundJob))
            .Select(job => (Guid)job.Args[0]).ToList();
        started.ShouldContain(one.Land.Organization);
        started.ShouldContain(other.Land.Organization);
    }

    private static async Task AddOtherMailAsync(GivenWatch given)
    {
        await using var db = given.Land.Open();
        db.Add(Message.Of(
            "other", NoticeKinds.StopWork, given.Land.Owner, "owner@example.org", new("Stop work", []), GivenWatch.Start,
            new()));
        await db.SaveChangesAsync();
    }

    /// <summary>The first call to a contact.</summary>
    private static async Task<AlarmCall> CallAsync(GivenWatch given, int place) =>
        (await given.ReadAsync()).Missed.SelectMany(missed => missed.Calls).First(call => call.Place == place);

    private static Instant At(int minutes) => GivenWatch.Start + Duration.FromMinutes(minutes);

    private static Task RunAsync(NoticeHost host, GivenWatch given) =>
        host.InScopeAsync<WatchRound>(round => round.RunAsync(given.Land.Organization, default));

    /// <summary>A round each minute up to one, included.</summary>
    private async Task RunUntilAsync(NoticeHost host, GivenWatch given, int minute)
    {
        while (_clock.GetCurrentInstant() < At(minute))
        {
            _clock.AdvanceMinutes(1);
            await RunAsync(host, given);
        }
    }

    private static Task SayAsync(
        NoticeHost host, GivenWatch given, Func<WatchHandler, Task<Change<CrewWatch>>> say) =>
        host.InOrganizationAsync<WatchHandler>(
            given.Land.Organization, async handler => (await say(handler)).Outcome.ShouldBe(ChangeOutcome.Done));
}
