using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Windows;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class NightlyRunTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task RunAsync_StoresDecisionAnnouncementsAndMessages_AndQueuesTheSending()
    {
        var land = await LandAsync("cooooooo");
        using var host = new NoticeHost(database, _clock);

        await host.RunNightAsync(land.Organization);

        (await StoredAsync(land)).ShouldBe((1, "good-to-cut reminder", "1-1 1-7"));
        host.Queued.ShouldHaveSingleItem().Args[0].ShouldBe(land.Organization);
    }

    [Fact]
    public async Task RunAsync_TurnsToTheNextBookedDayAndItsLead_WhenADayIsOver()
    {
        var land = await LandAsync("oooooooo");
        using var host = new NoticeHost(database, _clock);
        var next = Today.PlusDays(2);
        await using (var db = land.Open())
        {
            var task = await db.PlannedTasks.SingleAsync();
            (task.ScheduledOn, task.CrewLeadId) = (Today.PlusDays(-1), land.Lead);
            foreach (var (name, lead, day) in new[] { ("North", land.Lead, Today.PlusDays(-1)), ("South", land.Owner, next) })
            {
                var crew = new Crew { Name = name, LeadId = lead, HoursPerDay = 8 };
                db.Add(crew);
                db.Add(new Booking { TaskId = task.Id, CrewId = crew.Id, Day = day, Hours = 4, Place = 0, IsFixed = false });
            }
            await db.SaveChangesAsync();
        }

        await host.RunNightAsync(land.Organization);

        await using var stored = land.Open();
        var turned = await stored.PlannedTasks.SingleAsync();
        (turned.ScheduledOn, turned.CrewLeadId).ShouldBe((next, land.Owner));
    }

    [Fact]
    public async Task RunAsync_AddsNothing_WhenItRunsAgain()
    {
        var land = await LandAsync("cooooooo");
        using var host = new NoticeHost(database, _clock);
        await host.RunNightAsync(land.Organization);

        _clock.AdvanceMinutes(1);
        await host.RunNightAsync(land.Organization);

        (await StoredAsync(land)).ShouldBe((1, "good-to-cut reminder", "1-1 1-7"));
    }

    [Fact]
    public async Task RunAsync_AddsNothing_WhenItRunsTwiceAtOnce()
    {
        var land = await LandAsync("cooooooo");
        using var one = new NoticeHost(database, _clock);
        using var other = new NoticeHost(database, _clock);

        await Task.WhenAll(Enumerable.Range(0, 6).Select(run =>
            Task.Run(() => (run % 2 == 0 ? one : other).RunNightAsync(land.Organization))));

        (await StoredAsync(land)).ShouldBe((1, "good-to-cut reminder", "1-1 1-7"));
    }

    [Fact]
    public async Task RunAsync_WritesOneStopWorkEach_WhenTheForecastTurns()
    {
        var land = await LandAsync("oooooooo");
        using var host = new NoticeHost(database, _clock);
        await host.RunNightAsync(land.Organization);
        await host.SendAsync(land.Organization);
        _clock.AdvanceHours(24);
        await land.ForecastAsync("ooccccccc", Today.PlusDays(1), _clock.GetCurrentInstant());
        await land.NoAlertsAsync(_clock.GetCurrentInstant());

        await host.RunNightAsync(land.Organization);
        await host.RunNightAsync(land.Organization);

        (await StoredAsync(land)).ShouldBe((2, "good-to-cut stop-work stop-work", "1-2"));
    }

    [Fact]
    public async Task RunAsync_RefusesAndStoresNothing_WhenTheClockWasSetBack()
    {
        var land = await LandAsync("cooooooo");
        using var host = new NoticeHost(database, _clock);
        await host.RunNightAsync(land.Organization);
        await using (var db = land.Open())
        {
            db.Add(GivenLand.NewTask(land.Parcel, "T-2", "cleanup"));
            await db.SaveChangesAsync();
        }

        _clock.AdvanceMinutes(-1);
        var fault = await Should.ThrowAsync<ClockSetBackException>(() => host.RunNightAsync(land.Organization));

        fault.Message.ShouldContain("Set the clock right; nothing was stored.");
        (await StoredAsync(land)).Decisions.ShouldBe(1);
    }

    [Fact]
    public async Task RunAsync_StoresOneSet_WhenTheDatabaseEndsTheConnectionBeforeTheCommit()
    {
        var land = await LandAsync("cooooooo");
        using var dying = new NoticeHost(database, _clock, interceptor: new KillBeforeCommit(database.Address.Owner));
        using var next = new NoticeHost(database, _clock);

        await Should.ThrowAsync<Exception>(() => dying.RunNightAsync(land.Organization));
        (await StoredAsync(land)).ShouldBe((0, "", ""));
        await next.RunNightAsync(land.Organization);

        (await StoredAsync(land)).ShouldBe((1, "good-to-cut reminder", "1-1 1-7"));
    }

    [Fact]
    public async Task RunAsync_SendsOnce_WhenTheWorkerDiesBetweenStoringAndSending()
    {
        var land = await LandAsync("cooooooo");
        await using var server = new MailServer(MailServer.FreePort());
        using var dying = new NoticeHost(database, _clock, loseJobs: true);
        using var next = new NoticeHost(database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)));

        await Should.ThrowAsync<Exception>(() => dying.RunNightAsync(land.Organization));
        await next.RunNightAsync(land.Organization);
        await next.SendAsync(land.Organization);
        await next.SendAsync(land.Organization);

        server.Received.Select(mail => mail.Subject).Order().ShouldBe([
            "Good to cut this week: Cedar Hollow, Tue 3 – Mon 9 Feb",
            "Tue 3 Feb: Hinge cut, Cedar Hollow, North Forty"]);
    }

    [Fact]
    public async Task ReadAsync_HoldsOffersThatWait_UntilItIsKnownWhetherTheyStand()
    {
        var land = await LandAsync("cooooooo");
        await using var server = new MailServer(MailServer.FreePort());
        using var planning = new NoticeHost(database, _clock);
        using var sending = new NoticeHost(database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)));
        await planning.RunNightAsync(land.Organization);

        await planning.InOrganizationAsync<IServiceProvider>(land.Organization, async scope =>
        {
            var db = scope.GetRequiredService<WorkWindowsDb>();
            await using var transaction = await db.Database.BeginTransactionAsync();
            await scope.GetRequiredService<NightReader>().ReadAsync(Now, db.PlannedTasks, isWhole: true, default);
            await sending.SendAsync(land.Organization);
            server.Received.ShouldBeEmpty("what the night takes to be waiting must not leave behind its back");
        });
        await sending.SendAsync(land.Organization);

        server.Received.Count.ShouldBe(2);
    }

    [Fact]
    public async Task RunAsync_TakesTodayFromEachPropertysZone()
    {
        var land = await LandAsync("oooooooo");
        _clock.Reset(Instant.FromUtc(2026, 2, 2, 5, 30));
        await using (var db = land.Open())
        {
            var property = new Property
            {
                Key = "W",
                Name = "West",
                CountyFips = "55001",
                State = "WI",
                TimeZone = "America/Chicago",
            };
            var parcel = new Parcel { PropertyId = property.Id, Key = "W-1", Name = "W", Latitude = 44, Longitude = -90 };
            db.AddRange(property, parcel, GivenLand.NewTask(parcel.Id, "W-T", "tie-down"));
            await db.SaveChangesAsync();
        }
        using var host = new NoticeHost(database, _clock);

        await host.RunNightAsync(land.Organization);

        await using var stored = land.Open();
        (await stored.Decisions.Select(decision => decision.FirstDay).Order().ToListAsync())
            .ShouldBe([Today.PlusDays(-1), Today]);
    }

    [Fact]
    public async Task RunAsync_WarnsWithThePersonsId_WhenThereIsNoAddress()
    {
        var land = await LandAsync("ccoooooo");
        await using (var db = land.Open())
            await db.People.ExecuteUpdateAsync(people => people.SetProperty(person => person.Email, (string?)null));
        using var host = new NoticeHost(database, _clock);

        await host.RunNightAsync(land.Organization);

        host.Logs.Lines.ShouldContain($"Warning: Person {land.Owner} is to be told something and has no mail address");
        (await StoredAsync(land)).Messages.ShouldBeEmpty();
    }

    private async Task<GivenLand> LandAsync(string days)
    {
        var land = await GivenLand.StoreAsync(database);
        await land.ForecastAsync(days, Today, Now - Duration.FromHours(5));
        await land.NoAlertsAsync(Now - Duration.FromMinutes(10));
        return land;
    }

    private static async Task<(int Decisions, string Messages, string Announced)> StoredAsync(GivenLand land)
    {
        await using var db = land.Open();
        var windows = await db.Announcements.Where(window => window.StoppedAt == null)
            .OrderBy(window => window.LastDay).ToListAsync();
        return (
            await db.Decisions.CountAsync(),
            string.Join(" ", await db.Messages.Select(message => message.Kind).Order().ToListAsync()),
            Runs(windows));
    }
}
