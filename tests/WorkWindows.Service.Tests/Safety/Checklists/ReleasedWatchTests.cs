using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Safety.Checklists;

/// <summary>Nobody begins unreleased work, and nobody who is on a site goes unwatched for want of a signature.</summary>
public sealed class ReleasedWatchTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Watch_IsRefused_UntilTheLeadHasSigned()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var problem = await given.Lead.RefusedAsync(
            HttpMethod.Post, Watches(given), Form(), HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldStartWith($"Not released: the crew lead, {given.LeadName}, has not signed the checklist.");
        problem.GetProperty("release").Text("state").ShouldBe("not-signed");
        problem.Text("checklist").ShouldBe(given.List);
        (await given.Lead.ReadAsync(Watches(given))).GetArrayLength().ShouldBe(0);
        await given.SignAsync();
        (await given.Lead.CreateAsync(Watches(given), Form())).Text("begunUnreleased").ShouldBe("");
    }

    [Fact]
    public async Task Watch_BeginsForACrewThatIsOnTheSite_AndKeepsWhyItWasNotReleased()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var watch = await given.Lead.CreateAsync(Watches(given), Form(onSite: true));

        watch.Text("begunUnreleased").ShouldBe($"Not released: the crew lead, {given.LeadName}, has not signed the checklist.");
        (await given.Lead.GetStringAsync($"/tasks/{given.Task}/watch"))
            .ShouldContain("Stop work and put this right: Not released");
    }

    [Fact]
    public async Task Watch_BeginsForOnePersonWhoIsOnTheSiteAlone_AndKeepsThatItMustNotBe()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.SignAsync();

        await given.Lead.RefusedAsync(
            HttpMethod.Post, Watches(given), Form(people: 1), HttpStatusCode.UnprocessableEntity);
        var watch = await given.Lead.CreateAsync(Watches(given), Form(onSite: true, people: 1));

        watch.Text("begunUnreleased").ShouldStartWith("One person is alone at work that must not be done alone:");
    }

    [Fact]
    public async Task WatchThatIsOn_GoesOn_WhenTheListChanges_ToTheMissedCheckInAndTheEnd()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.SignAsync();
        var watch = await given.Lead.CreateAsync(Watches(given), Form());
        await given.ChangeListAsync();
        (await given.ReleaseAsync()).ShouldBe("changed-since-signed");

        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 13, 15));
        await using (var scope = service.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<WatchRound>().RunAsync(given.Office.Organization, default);
        await using var db = service.Database.Open(given.Office.Organization);
        (await db.AlarmCalls.CountAsync()).ShouldBe(1);
        await given.Lead.PostOkAsync($"/api/watches/{watch.Id()}/acknowledgement", new { });
        await given.Lead.PostOkAsync($"/api/watches/{watch.Id()}/check-ins", new { });
        await given.Lead.PostOkAsync($"/api/watches/{watch.Id()}/end", new { });
    }

    [Fact]
    public async Task WatchPage_RefusesWithTheReason_AndBeginsForACrewOnTheSite()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var page = $"/tasks/{given.Task}/watch";
        Dictionary<string, string> fields = new()
        {
            ["Entry.PeopleOnSite"] = "2",
            ["Entry.Contacts[0].Name"] = "Ada Birch",
            ["Entry.Contacts[0].Email"] = "ada@example.org",
        };

        using var refused = await given.Lead.PostFormAsync($"{page}?handler=Start", new(fields));
        (await refused.Content.ReadAsStringAsync()).ShouldContain("No watch begins for work that must not begin.");
        fields["Entry.OnSite"] = "true";
        using var begun = await given.Lead.PostFormAsync($"{page}?handler=Start", fields);

        begun.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await given.Lead.ReadAsync(Watches(given))).GetArrayLength().ShouldBe(1);
    }

    private static string Watches(GivenChecklist given) => $"/api/tasks/{given.Task}/watches";

    private static object Form(bool? onSite = null, int people = 2) => new
    {
        peopleOnSite = people,
        contacts = new[] { new { name = "Ada Birch", email = "ada@example.org" } },
        onSite,
    };
}
