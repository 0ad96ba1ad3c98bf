using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;

namespace WorkWindows.Browser.Tests;

/// <summary>What holds of every page. Set WORKWINDOWS_SCREENSHOTS to a folder to get their pictures.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class AppearanceTests(SiteFixture site)
{
    public static TheoryData<string, string> PagesOnScreens()
    {
        string[] pages =
        [
            "sign-in", "week", "week-empty", "season", "season-unknown", "day-closed", "day-limited", "day-unknown",
            "checklist", "missing", "chances", "weather", "weather-all", "weather-short", "weather-none",
        ];
        string[] wide = ["sign-in", "week", "season", "day-closed", "checklist", "chances", "weather"];
        string[] dark = ["week", "season-2025", "day-limited", "chances", "weather"];
        string[] darkOnPhone = ["chances", "weather"];
        return new([
            .. pages.Select(page => (page, Screen.Phone.Name)),
            .. wide.Select(page => (page, Screen.Desktop.Name)),
            .. dark.Select(page => (page, Screen.Dark.Name)),
            .. darkOnPhone.Select(page => (page, Screen.DarkPhone.Name)),
        ]);
    }

    [Theory]
    [MemberData(nameof(PagesOnScreens))]
    public async Task Page_IsAccessible_AndFitsItsScreen(string name, string screenName)
    {
        await using var visit = await OpenAsync(name, screenName);
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveCountAsync(1);
        await visit.TakePictureAsync($"{name}-{screenName}");

        var axe = await visit.Page.RunAxe();
        var (scrolled, shown) = (
            await visit.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"),
            await visit.Page.EvaluateAsync<int>("document.documentElement.clientWidth"));

        axe.Violations
            .Select(violation => $"{violation.Id}: {JsonSerializer.Serialize(violation.Nodes.Select(node => node.Html))}")
            .ShouldBeEmpty();
        scrolled.ShouldBeLessThanOrEqualTo(shown);
    }

    /// <summary>Whatever page there is, on the land of the demo; those that need a key in their address have tests of their own.</summary>
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    [InlineData("dark-phone")]
    public async Task EveryPage_IsAccessible_AndFitsItsScreen(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, scripts: true);
        var property = await FirstAsync("/api/properties");
        var (parcel, task) = (await FirstAsync($"/api/properties/{property}/parcels"), await FirstAsync("/api/tasks"));
        var owner = await FirstAsync("/api/people", person => person.GetProperty("role").GetString() == "landowner");
        var found = new List<string>();
        foreach (var route in site.Routes.Where(route => !route.Contains("{organization:guid}") && route != "sign-out"))
        {
            var id = route.Split('/')[0] switch { "properties" => property, "parcels" => parcel, "people" => owner, _ => task };
            var address = route.Replace("{id:guid}", id).Replace("{date?}", "2026-02-04").Replace("{date}", "2026-02-04")
                .Replace("{**path}", "guide.md").Replace("{id}", route.Split('/')[1..].FirstOrDefault() switch
                {
                    "rules" => "oak-wilt.warm-spell",
                    "measures" => "saw-face",
                    _ => "hinge-cut",
                });
            await visit.Page.GotoAsync($"/{address}");
            found.AddRange((await visit.Page.RunAxe()).Violations.Select(violation => $"{route}: {violation.Id}: {violation.Nodes[0].Html}"));
            if (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"))
                found.Add($"{route}: wider than the screen");
        }

        found.ShouldBeEmpty();

        async Task<string> FirstAsync(string address, Func<JsonElement, bool>? isMeant = null)
        {
            var answer = await visit.Page.APIRequest.GetAsync(address);
            using var json = JsonDocument.Parse(await answer.TextAsync());
            return json.RootElement.EnumerateArray().First(row => isMeant?.Invoke(row) ?? true).GetProperty("id").GetString()!;
        }
    }

    [Fact]
    public async Task Checklist_PrintsOnTwoPagesAtMost()
    {
        await using var visit = await site.OpenAsync(
            Screen.Desktop, Scenario.Consultant, $"/tasks/{site.Scenario.HingeCut}/checklist?date=2026-02-04");

        var printed = await visit.PrintAsync("checklist");

        PageOfPdf().Count(System.Text.Encoding.Latin1.GetString(printed)).ShouldBeInRange(1, 2);
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PageOfPdf();

    /// <summary>The demo's hinge cut, or the weather of its parcel.</summary>
    private async Task<Visit> DemoAsync(string name, Screen screen)
    {
        var visit = await site.OpenDemoAsync(screen);
        if (name == "chances")
            return visit;
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "The weather of" }).ClickAsync();
        if (name == "weather-all")
            await visit.Page.GetByRole(AriaRole.Link, new() { Name = "All", Exact = true }).ClickAsync();
        return visit;
    }

    private async Task<Visit> OpenAsync(string name, string screenName)
    {
        var screen = Screen.Named(screenName);
        var scenario = site.Scenario;
        var (email, path) = name switch
        {
            "sign-in" => (null, "/sign-in"),
            "week" => (Scenario.Consultant, "/week"),
            "week-empty" => (Scenario.Newcomer, "/week"),
            "season" => (Scenario.Consultant, $"/tasks/{scenario.HingeCut}"),
            "season-2025" => (Scenario.Consultant, $"/tasks/{scenario.HingeCut}?year=2025"),
            "season-unknown" => (Scenario.Consultant, $"/tasks/{scenario.Felling}"),
            "day-closed" => (Scenario.Consultant, $"/tasks/{scenario.HingeCut}/days/2026-02-06"),
            "day-limited" => (Scenario.Landowner, $"/tasks/{scenario.HingeCut}/days/2026-02-04"),
            "day-unknown" => (Scenario.Consultant, $"/tasks/{scenario.Felling}/days/2026-02-04"),
            "checklist" => (Scenario.Consultant, $"/tasks/{scenario.HingeCut}/checklist?date=2026-02-04"),
            "chances" or "weather" or "weather-all" => (Scenario.DemoConsultant, "/week"),
            "weather-short" => (Scenario.Consultant, $"/parcels/{scenario.Ridge}/weather?range=1y"),
            "weather-none" => (Scenario.Consultant, $"/parcels/{scenario.Swale}/weather"),
            _ => ((string?)Scenario.Consultant, "/no/such/page"),
        };
        if (email == Scenario.DemoConsultant)
            return await DemoAsync(name, screen);
        if (email is not null)
            return await site.OpenAsync(screen, email, path);
        var visit = await site.OpenAsync(screen);
        await visit.Page.GotoAsync(path);
        return visit;
    }
}
