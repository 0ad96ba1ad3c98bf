using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;

namespace WorkWindows.Browser.Tests;

/// <summary>What holds of every page on every screen. Set WORKWINDOWS_SCREENSHOTS to a folder to get their pictures.</summary>
[Collection(SiteCollection.Name)]
public sealed class AppearanceTests(SiteFixture site)
{
    public static TheoryData<string, string> PagesOnScreens()
    {
        string[] pages =
        [
            "sign-in", "week", "week-empty", "season", "season-unknown", "day-closed", "day-limited", "day-unknown",
            "checklist", "missing",
        ];
        string[] screens = [Screen.Desktop.Name, Screen.Phone.Name];
        return new([
            .. pages.SelectMany(page => screens.Select(screen => (page, screen))),
            ("week", Screen.Dark.Name), ("season-2025", Screen.Dark.Name), ("day-limited", Screen.Dark.Name),
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

        axe.Violations.Select(violation =>
            $"{violation.Id}: {JsonSerializer.Serialize(violation.Nodes.Select(node => node.Html).Take(3))}").ShouldBeEmpty();
        scrolled.ShouldBeLessThanOrEqualTo(shown);
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
            _ => ((string?)Scenario.Consultant, "/no/such/page"),
        };
        var visit = email is null ? await site.OpenAsync(screen) : await site.OpenAsync(screen, email);
        await visit.Page.GotoAsync(path, new() { WaitUntil = WaitUntilState.Load });
        return visit;
    }
}
