using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.WorkDone;

namespace WorkWindows.Service.Tests.Landowners;

public sealed partial class LandTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    /// <summary>What an old phone loads at first, with its style sheet.</summary>
    private const int MostBytes = 200 * 1024;

    private Guid organization;

    [Fact]
    public async Task Land_ShowsOwnersTheirOwn_DayByDay_AndNothingOfOthers()
    {
        var given = await GivenAsync();
        await LookAsync();

        var page = await TextAsync(given.Owner, "/land");

        page.ShouldContain(given.OwnName);
        page.ShouldContain("Tie-down of hinged stems, Slope");
        page.ShouldContain("Today");
        page.ShouldContain("What to wear");
        page.ShouldNotContain(given.OthersName);
        (await given.Owner.GetAsync("/")).Headers.Location!.OriginalString.ShouldBe("/land");
    }

    [Fact]
    public async Task Land_ThatNobodyHasLookedAt_IsNotKnown()
    {
        var given = await GivenAsync();

        var page = await TextAsync(given.Owner, "/land");

        page.ShouldContain("not known: do not start (nobody has looked at it since yesterday)");
        page.ShouldNotContain("good to work");
    }

    [Fact]
    public async Task Land_SaysWhatWasDone_AndWhatComesNext_WithoutHoursThatWereTakenBack()
    {
        var given = await GivenAsync();
        var hinge = await Land.TaskAsync(given.Machine, given.Parcel, "hinge-cut");
        await given.Machine.PutAsync($"/api/tasks/{hinge.Id()}/completion", new { completedOn = "2025-02-10" });
        await using (var db = service.Database.Open(organization))
        {
            db.AddRange(Record(hinge.Id(), new(2025, 2, 8), 6), Record(hinge.Id(), new(2025, 2, 7), -6));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var page = await TextAsync(given.Owner, "/land");

        page.ShouldContain("Mon 10 Feb 2025: Hinge cut, Slope, finished");
        page.ShouldContain("Sat 8 Feb 2025: Hinge cut, Slope, worked on");
        page.ShouldNotContain("Fri 7 Feb 2025");
        page.ShouldContain("Re-cut of hinged stems, Slope: 2028 to 2029");
    }

    [Fact]
    public async Task Link_ShowsTheSameWithoutSigningIn_UntilItIsReplacedOrTakenAway()
    {
        var given = await GivenAsync();
        var anybody = service.Anonymous();

        await given.Consultant.PostFormAsync($"/people/{given.OwnerId}/land?handler=Renew", []);
        var first = await LinkAsync(given);
        var page = await TextAsync(anybody, first);
        await given.Consultant.PostFormAsync($"/people/{given.OwnerId}/land?handler=Renew", []);
        var second = await LinkAsync(given);
        var replaced = await anybody.GetAsync(first);
        var working = await anybody.GetAsync(second);
        await given.Consultant.PostFormAsync($"/people/{given.OwnerId}/land?handler=Withdraw", []);

        page.ShouldContain(given.OwnName);
        page.ShouldContain("/calendars/");
        page.ShouldNotContain(given.OthersName);
        replaced.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        working.StatusCode.ShouldBe(HttpStatusCode.OK);
        working.Headers.CacheControl!.NoStore.ShouldBeTrue();
        foreach (var dead in new[] { second, $"/land/{organization}", $"/land/{organization}?key=", $"/land/{Guid.NewGuid()}?key=x" })
            (await anybody.GetAsync(dead)).StatusCode.ShouldBe(HttpStatusCode.NotFound, dead);
        await using var db = service.Database.Open(organization);
        (await db.AuditEntries.CountAsync(entry => entry.Kind == AuditKind.LandLink, TestContext.Current.CancellationToken)).ShouldBe(3);
    }

    [Fact]
    public async Task Link_IsGivenByConsultantsAlone_AndOfLandowners()
    {
        var given = await GivenAsync();

        (await given.Owner.GetAsync($"/people/{given.OwnerId}/land")).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
        (await given.Consultant.GetAsync($"/people/{Guid.NewGuid()}/land")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await given.Consultant.GetAsync("/land")).Headers.Location!.OriginalString.ShouldBe("/");
    }

    [Fact]
    public async Task Land_WeighsLittle_AndAsksTheDatabaseAFixedNumberOfTimes()
    {
        var given = await GivenAsync();
        for (var task = 0; task < 20; task++)
            await Land.TaskAsync(given.Machine, given.Parcel, task % 2 == 0 ? "hinge-cut" : "cleanup");
        await LookAsync();

        var calls = await service.Calls.OfAsync(() => given.Owner.GetStringAsync("/land"));
        var page = await given.Owner.GetStringAsync("/land");
        var style = await given.Owner.GetByteArrayAsync(StyleSheet().Match(page).Groups[1].Value);

        calls.ShouldBeLessThanOrEqualTo(DatabaseCalls.Most);
        (page.Length + style.Length).ShouldBeLessThan(MostBytes);
        page.ShouldNotContain("<script");
    }

    private static WorkRecord Record(Guid task, LocalDate day, decimal hours) => new()
    {
        Id = Guid.NewGuid(),
        TaskId = task,
        Day = day,
        People = 2,
        PersonHours = hours,
        IsLast = false,
        RecordedAt = Instant.FromUtc(2025, 2, 20, 12, 0),
        RecordedBy = "somebody",
    };

    private static async Task<string> LinkAsync(Given given) => new Uri(Link().Match(
        await TextAsync(given.Consultant, $"/people/{given.OwnerId}/land")).Groups[1].Value).PathAndQuery;

    private static async Task<string> TextAsync(HttpClient client, string page) =>
        WebUtility.HtmlDecode(await client.GetStringAsync(page));

    private async Task LookAsync()
    {
        await using var scope = service.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<NightlyRun>().LookAsync(organization, TestContext.Current.CancellationToken);
    }

    private async Task<Given> GivenAsync()
    {
        organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var machine = await service.MachineAsync(organization);
        var (own, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var (others, foreign) = await Land.CreateAsync(machine, -84.2, 42.6, "26065", "MI");
        await Land.TaskAsync(machine, parcel, "tie-down");
        await Land.TaskAsync(machine, foreign, "tie-down");
        var (owner, consultant) = ($"o.{Guid.NewGuid():N}@example.org", $"c.{Guid.NewGuid():N}@example.org");
        var ownerId = await service.AddPersonAsync(organization, owner, Role.Landowner);
        await service.AddPersonAsync(organization, consultant, Role.Consultant);
        await using var db = service.Database.Open(organization);
        (await db.Properties.SingleAsync(property => property.Id == own)).LandownerId = ownerId;
        await db.SaveChangesAsync();
        var names = await db.Properties.ToDictionaryAsync(property => property.Id, property => property.Name);
        return new(
            machine, (await service.SignInAsync(owner)).Client, (await service.SignInAsync(consultant)).Client, ownerId, parcel,
            names[own], names[others]);
    }

    private sealed record Given(
        HttpClient Machine, HttpClient Owner, HttpClient Consultant, Guid OwnerId, Guid Parcel, string OwnName, string OthersName);

    [GeneratedRegex("<p class=\"address\"><a href=\"([^\"]+)\"")]
    private static partial Regex Link();

    [GeneratedRegex("<link rel=\"stylesheet\" href=\"([^\"]+)\"")]
    private static partial Regex StyleSheet();
}
