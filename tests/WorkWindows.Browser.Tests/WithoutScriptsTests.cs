using Microsoft.Playwright;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>Every page says all it has to say in a browser that runs no scripts.</summary>
[Collection(SiteCollection.Name)]
public sealed class WithoutScriptsTests(SiteFixture site)
{
    [Fact]
    public async Task WeekAndDay_ReadTheSame()
    {
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Consultant, scripts: false);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Fri 6 Feb: closed" }).ClickAsync();

        await Expect(visit.Page.GetByText("Closed on Fri 6 Feb", new() { Exact = true })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Article).First).ToContainTextAsync(
            "below 20 °F for 3 days in a row");
    }

    [Fact]
    public async Task Season_TellsWindowsAndTemperaturesInTables()
    {
        var season = $"/tasks/{site.Scenario.HingeCut}?year=2025";
        await using var visit = await site.OpenAsync(Screen.Desktop, Scenario.Consultant, season, scripts: false);

        await Expect(visit.Page.GetByRole(AriaRole.Row).Filter(new() { HasText = "Wed 30 Apr 2025" }))
            .ToContainTextAsync("then closed: No hinge cutting or overstory felling in full leaf");
        await visit.Page.GetByText("Temperatures by month").ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Row).Filter(new() { HasText = "Jul 2025" }))
            .ToContainTextAsync("°F");
    }
}
