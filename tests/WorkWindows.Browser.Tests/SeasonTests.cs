using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A season says what each of its days is, and why, without leaving the page.</summary>
[Collection(SiteCollection.Name)]
public sealed class SeasonTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    [InlineData("dark")]
    public async Task Property_SaysADay_ThatIsTappedOrReachedByArrowKeys(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, "/morning");
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Heron Marsh", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Season", Exact = true }).ClickAsync();
        var said = page.Locator("#day-said");

        await page.GetByRole(AriaRole.Region, new() { Name = "The season of each work" }).FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(said).ToContainTextAsync("Tue 3 Feb 2026: ");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(said).ToContainTextAsync("Wed 4 Feb 2026: ");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(said).ToContainTextAsync("Wed 4 Feb 2026: ");
        (await page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync($"property-season-{screen}");

        await page.Locator(".links a").Nth(70).DispatchEventAsync("click");
        await Expect(said).ToContainTextAsync("2026: ");
        await page.GetByRole(AriaRole.Link, new() { Name = "Its reasons" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/days/2026-0"));
    }
}
