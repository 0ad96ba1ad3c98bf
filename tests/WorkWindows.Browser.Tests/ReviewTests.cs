using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant asks why a day was closed.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class ReviewTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task Day_IsFound_Opened_AndReplayed(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), ReviewScenario.Consultant);
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Review" }).ClickAsync();
        await page.GetByLabel("To", new() { Exact = true }).FillAsync("2026-02-28");
        await page.GetByLabel("State").SelectOptionAsync("closed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "Leave the grouse" })).ToContainTextAsync("8");
        await FitsAsync(page);
        await visit.TakePictureAsync($"review-{screen}");

        await page.Locator("ul.stems a").First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { NameRegex = WhyClosed() })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Replay the decision" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("The same answer");
        await FitsAsync(page);
        await visit.TakePictureAsync($"review-day-{screen}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare with what is known now" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("closed, as then");
        await FitsAsync(page);
    }

    [Fact]
    public async Task DecisionThatIsNotWhatItWas_SaysSo()
    {
        await using var visit = await site.OpenAsync(
            Screen.Phone, Scenario.Consultant, $"/review/{site.Scenario.HingeCut}/2026-02-06");

        await Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("do not give what was decided");
        await FitsAsync(visit.Page);
    }

    private static async Task FitsAsync(IPage page)
    {
        (await page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await page.EvaluateAsync<int>("document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(
            await page.EvaluateAsync<int>("document.documentElement.clientWidth"));
    }

    [GeneratedRegex("^Why closed on ")]
    private static partial Regex WhyClosed();
}
