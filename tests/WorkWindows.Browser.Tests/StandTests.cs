using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant looks at a stand and tries a removal.</summary>
[Collection(SiteCollection.Name)]
public sealed class StandTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task Stand_SaysWhatIsLeft_AndWhatTakesAHinge(string screen)
    {
        await using var visit = await site.OpenAsync(
            Screen.Named(screen), Scenario.Consultant, $"/parcels/{site.Scenario.Ridge}/stand", scripts: true);
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Stand of Beech Ridge" })).ToBeVisibleAsync();
        await visit.Page.GetByLabel("Fell, % of sugar maple, 6 to 12 in").FillAsync("50");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "See what is left" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Row, new() { Name = "Stems 80 40", Exact = true })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Only the thin ones. Above 8 in a stem splits or kicks back.")).ToBeVisibleAsync();
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync($"stand-{screen}");
    }
}
