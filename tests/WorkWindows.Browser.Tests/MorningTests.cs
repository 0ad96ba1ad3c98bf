using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant looks at the morning, finds tasks, changes several, and hands in a file.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class MorningTests(SiteFixture site)
{
    private const string WrongFile =
        "task,parcel,practice,quantity,unit,crewSize,deadline,scheduledOn,prerequisites,crewLead\nA,nowhere,cleanup,2,acres,2,,,,\n";

    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task Morning_LeadsToTheTasksOfADay(string screen)
    {
        await using var visit = await OpenAsync(screen, "/morning");
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("tasks may be done today");
        await FitsAsync(visit, $"morning-{screen}");

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Today", Exact = true }).ClickAsync();

        await Expect(visit.Page.GetByLabel("State then")).ToHaveValueAsync("workable");
        await Expect(visit.Page.GetByRole(AriaRole.Checkbox, new() { Name = "Choose Trail opening" })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("of 14");
        await FitsAsync(visit, $"tasks-{screen}");
    }

    [Fact]
    public async Task Tasks_ChosenTogether_AreShownBeforeTheyAreChanged()
    {
        await using var visit = await OpenAsync("desktop", "/tasks?practice=cleanup");
        foreach (var box in await visit.Page.GetByRole(AriaRole.Checkbox, new() { Name = "Choose Cleanup" }).AllAsync())
            await box.CheckAsync();
        await visit.Page.GetByLabel("Deadline", new() { Exact = true }).FillAsync("2026-04-10");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show what would change" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = ChangeSome() })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("→ 2026-04-10").First).ToBeVisibleAsync();
        await Expect(visit.Page.GetByLabel("Deadline", new() { Exact = true })).ToHaveValueAsync("2026-04-10");
        await FitsAsync(visit, "tasks-change-desktop");
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task File_WithFaults_IsToldLineByLine(string screen)
    {
        await using var visit = await OpenAsync(screen, "/import");
        await visit.Page.GetByLabel("Parcels as GeoJSON").SetInputFilesAsync(new FilePayload
        {
            Name = "work.csv",
            MimeType = "text/csv",
            Buffer = Encoding.UTF8.GetBytes(WrongFile),
        });
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show what would change" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "1 fault: nothing was stored" })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Row).Nth(1)).ToContainTextAsync("nowhere");
        await FitsAsync(visit, $"import-{screen}");
    }

    /// <summary>A personal link on an old phone: no scripts, and a network of 400 kbit/s that answers after 400 ms.</summary>
    [Fact]
    public async Task OwnersLand_IsSeenBehindItsLink_OnAnOldPhone()
    {
        await using var visit = await OpenAsync("phone", "/morning");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Heron Marsh", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "What the owner sees" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        var link = await visit.Page.Locator("p.address a").GetAttributeAsync("href");
        await using var old = await site.OpenAsync(Screen.Phone, scripts: false);
        var network = await old.Page.Context.NewCDPSessionAsync(old.Page);
        await network.SendAsync("Network.emulateNetworkConditions", new()
        {
            ["offline"] = false,
            ["latency"] = 400,
            ["downloadThroughput"] = 50_000,
            ["uploadThroughput"] = 50_000,
        });

        await old.Page.GotoAsync(link!);

        await Expect(old.Page.GetByRole(AriaRole.Heading, new() { Name = "Heron Marsh" })).ToBeVisibleAsync();
        await Expect(old.Page.GetByText("Today").First).ToBeVisibleAsync();
        await Expect(old.Page.GetByText("Tamarack Forty")).ToHaveCountAsync(0);
        await old.Page.GetByText("What to wear").ClickAsync();
        await Expect(old.Page.GetByText("Wear a hard hat").First).ToBeVisibleAsync();
        (await old.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await old.TakePictureAsync("land-phone");
        await FitsAsync(visit, "owners-land-phone");
    }

    private static async Task FitsAsync(Visit visit, string picture)
    {
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync(picture);
    }

    private Task<Visit> OpenAsync(string screen, string page) =>
        site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, page);

    [GeneratedRegex("^Change [0-9]+ tasks?$")]
    private static partial Regex ChangeSome();
}
