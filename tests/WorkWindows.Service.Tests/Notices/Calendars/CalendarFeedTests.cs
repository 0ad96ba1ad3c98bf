using System.Net;
using Ical.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Notices.Calendars;

public sealed class CalendarFeedTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Feed_IsReadWithItsAddressAlone_UntilItIsChangedOrEnded()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"l.{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, name, Role.Landowner);
        var own = (await service.SignInAsync(name)).Client;
        var address = (await own.PostOkAsync($"/api/people/{person}/calendar", new { })).Text("address");
        await StoreAsync(organization, person);

        var answer = await service.Anonymous().GetAsync(address);
        answer.Content.Headers.ContentType!.ToString().ShouldBe("text/calendar; charset=utf-8");
        var e = Calendar.Load(await answer.Content.ReadAsStringAsync())!.Events.ShouldHaveSingleItem()!;
        (e.Summary, e.Sequence).ShouldBe(("Hinge cut", 3));
        using var again = new HttpRequestMessage(HttpMethod.Get, address);
        again.Headers.IfNoneMatch.Add(answer.Headers.ETag!);
        (await service.Anonymous().SendAsync(again)).StatusCode.ShouldBe(HttpStatusCode.NotModified);

        var next = (await own.PostOkAsync($"/api/people/{person}/calendar", new { })).Text("address");
        (await service.Anonymous().GetAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await own.DeleteAsync($"/api/people/{person}/calendar")).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await service.Anonymous().GetAsync(next)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Feed_LeavesATrailOfItsAddresses_WithoutThem()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"l.{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, name, Role.Landowner);
        var own = (await service.SignInAsync(name)).Client;

        var first = (await own.PostOkAsync($"/api/people/{person}/calendar", new { })).Text("address");
        await own.PostOkAsync($"/api/people/{person}/calendar", new { });
        await own.DeleteAsync($"/api/people/{person}/calendar");
        await own.DeleteAsync($"/api/people/{person}/calendar");

        await using var db = service.Database.Open(organization);
        var trail = await db.AuditEntries.Where(entry => entry.RowId == person).OrderBy(entry => entry.Id).ToListAsync();
        trail.Select(entry => (entry.Kind, entry.PersonId, Had(entry.Before), Had(entry.After))).ShouldBe(
        [
            (AuditKind.NoticeChoice, person, false, true), (AuditKind.NoticeChoice, person, true, true),
            (AuditKind.NoticeChoice, person, true, false),
        ]);
        trail.ShouldAllBe(entry => !$"{entry.Before}{entry.After}".Contains(first.Split("key=")[1]));

        static bool Had(string? trail) => trail?.Contains("\"hasFeed\": true", StringComparison.Ordinal)
            ?? false;
    }

    [Fact]
    public async Task Feed_IsReadAlso_InABrowserInWhichSomebodyElseHasSignedIn()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"l.{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, name, Role.Landowner);
        var own = (await service.SignInAsync(name)).Client;
        var address = (await own.PostOkAsync($"/api/people/{person}/calendar", new { })).Text("address");
        var other = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var stranger = $"s.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(other, stranger, Role.Landowner);

        var answer = await (await service.SignInAsync(stranger)).Client.GetAsync(address);

        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Address_KeepsItsSecretOutOfThePath_WhichIsLogged()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"l.{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, name, Role.Landowner);
        var own = (await service.SignInAsync(name)).Client;
        var address = (await own.PostOkAsync($"/api/people/{person}/calendar", new { })).Text("address");

        new Uri(address).AbsolutePath.ShouldBe($"/calendars/{organization}.ics");
    }

    private async Task StoreAsync(Guid organization, Guid person)
    {
        await using var db = service.Database.Open(organization);
        db.Add(new CalendarDay
        {
            PersonId = person,
            Key = "a",
            First = new(2025, 3, 3),
            Last = new(2025, 3, 4),
            TimeZone = "America/Detroit",
            Title = "Hinge cut",
            Place = "Cedar Hollow, North Forty",
            IsCancelled = false,
            Sequence = 3,
            ChangedAt = Instant.FromUtc(2025, 3, 1, 9, 0),
        });
        await db.SaveChangesAsync();
    }
}

/// <summary>The feed as the nights of a winter write it.</summary>
public sealed class CalendarOfNightsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly LocalDate Today = GivenNight.Today;

    [Fact]
    public async Task Nights_PublishGrowTakeBackAndBringAgain_UnderOneIdentifier()
    {
        var clock = new FakeClock(GivenNight.Now);
        var land = await GivenLand.StoreAsync(database);
        using var host = new NoticeHost(database, clock);
        var seen = new List<string>();
        foreach (var days in new[] { "coocccccccc", "ooocccccccc", "ccccccccccc", "ooocccccccc" })
        {
            await land.ForecastAsync(days, Today.PlusDays(seen.Count), clock.GetCurrentInstant());
            await land.NoAlertsAsync(clock.GetCurrentInstant());
            await host.RunNightAsync(land.Organization);
            await host.SendAsync(land.Organization);
            seen.Add(await OwnersAsync(land));
            clock.AdvanceHours(24);
        }

        seen.ShouldBe([
            "3 Feb - 4 Feb: 0",
            "3 Feb - 5 Feb: 1",            // it has grown
            "3 Feb - 5 Feb: 2, cancelled",
            "3 Feb - 5 Feb: 2, cancelled; 5 Feb - 7 Feb: 0",
        ]);
    }

    [Fact]
    public async Task Nights_MoveTheScheduledDayOfTheLead_AndSayWhenItIsClosed()
    {
        var clock = new FakeClock(GivenNight.Now);
        var land = await GivenLand.StoreAsync(database);
        using var host = new NoticeHost(database, clock);
        var seen = new List<string>();
        foreach (var (day, days) in new[] { (3, "ooooooooooo"), (5, "ooooocccccc"), (-1, "ooooooooooo") })
        {
            await using (var db = land.Open())
            {
                var task = db.PlannedTasks.Single();
                task.ScheduledOn = day < 0 ? null : Today.PlusDays(day);
                await db.SaveChangesAsync();
            }
            await land.ForecastAsync(days, Today, clock.GetCurrentInstant());
            await land.NoAlertsAsync(clock.GetCurrentInstant());
            await host.RunNightAsync(land.Organization);
            await using (var db = land.Open())
            {
                var entry = db.CalendarDays.Single(row => row.PersonId == land.Lead && row.Key.EndsWith("-scheduled"));
                seen.Add($"{entry.Title} {entry.First:d MMM} {entry.From}-{entry.Until}: {entry.Sequence}{(entry.IsCancelled ? ", cancelled" : "")}");
            }
            clock.AdvanceMinutes(10);
        }

        seen.ShouldBe([
            "Hinge cut 5 Feb 08:00:00-17:00:00: 0",
            "Hinge cut: closed, do not start 7 Feb 08:00:00-17:00:00: 1",
            "Hinge cut: closed, do not start 7 Feb 08:00:00-17:00:00: 2, cancelled",
        ]);
    }

    [Fact]
    public async Task Night_MovesTheScheduledDay_HoweverLongAgoItWas()
    {
        var clock = new FakeClock(GivenNight.Now);
        var land = await GivenLand.StoreAsync(database);
        using var host = new NoticeHost(database, clock);
        foreach (var day in new[] { 1, 100 })
        {
            await ScheduleAsync(land, Today.PlusDays(day));
            await host.RunNightAsync(land.Organization);
            clock.Advance(Duration.FromDays(90));
        }

        await using var db = land.Open();
        var entry = db.CalendarDays.Single(row => row.PersonId == land.Lead && row.Key.EndsWith("-scheduled"));
        (entry.First, entry.Sequence).ShouldBe((Today.PlusDays(100), 1));
    }

    [Fact]
    public async Task Night_TakesBackTheScheduledDay_OfATaskThatIsDoneBeforeIt()
    {
        var clock = new FakeClock(GivenNight.Now);
        var land = await GivenLand.StoreAsync(database);
        using var host = new NoticeHost(database, clock);
        await ScheduleAsync(land, Today.PlusDays(4));
        await host.RunNightAsync(land.Organization);
        await using (var db = land.Open())
        {
            db.PlannedTasks.Single().CompletedOn = Today;
            await db.SaveChangesAsync();
        }
        clock.AdvanceMinutes(10);

        await host.RunNightAsync(land.Organization);

        await using var stored = land.Open();
        var entry = stored.CalendarDays.Single(row => row.PersonId == land.Lead && row.Key.EndsWith("-scheduled"));
        (entry.IsCancelled, entry.Sequence).ShouldBe((true, 1));
    }

    private static async Task ScheduleAsync(GivenLand land, LocalDate day)
    {
        await using var db = land.Open();
        db.PlannedTasks.Single().ScheduledOn = day;
        await db.SaveChangesAsync();
    }

    private static async Task<string> OwnersAsync(GivenLand land)
    {
        await using var db = land.Open();
        return string.Join("; ", db.CalendarDays.Where(row => row.PersonId == land.Owner).OrderBy(row => row.First).AsEnumerable()
            .Select(row => $"{row.First:d MMM} - {row.Last:d MMM}: {row.Sequence}{(row.IsCancelled ? ", cancelled" : "")}"));
    }
}
