using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>Somebody who is new looks things up, and is led around.</summary>
[Collection(SiteCollection.Name)]
public sealed class HelpTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone", "/help")]
    [InlineData("desktop", "/help")]
    [InlineData("phone", "/help/practices/hinge-cut")]
    [InlineData("desktop", "/help/practices/hinge-cut")]
    [InlineData("phone", "/help/rules/oak-wilt.warm-spell")]
    [InlineData("phone", "/help/measures/saw-face")]
    [InlineData("phone", "/help/docs/guide.md")]
    [InlineData("desktop", "/help/docs/guide.md")]
    [InlineData("phone", "/help/docs/rules/stands.md")]
    [InlineData("dark", "/help/docs/rules/stands.md")]
    public async Task Pages_AreForEverybody(string screen, string page)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, page);

        await FitsAsync(visit);
        await visit.TakePictureAsync($"{page[1..].Replace('/', '-')}-{screen}");
    }

    [Fact]
    public async Task Reason_LeadsToItsRule_AndFromThereToThePractice()
    {
        await using var visit = await site.OpenAsync(
            Screen.Phone, Scenario.Consultant, $"/tasks/{site.Scenario.HingeCut}/days/2026-02-06");

        await visit.Page.Locator(".reason h3 a").First.ClickAsync();
        await Expect(visit.Page.GetByText("How binding")).ToBeVisibleAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Hinge cut" }).First.ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "In which order" })).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task Tour_LeadsThroughTheDemo_AndEnds(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, "/help");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "A tour" }).ClickAsync();
        var tour = visit.Page.GetByRole(AriaRole.Complementary, new() { Name = "Tour" });

        for (var stop = 1; stop < 8; stop++)
        {
            await Expect(tour).ToContainTextAsync($"{stop} of 8");
            if (stop == 2)
            {
                await FitsAsync(visit);
                await visit.TakePictureAsync($"tour-{screen}");
            }
            await tour.GetByRole(AriaRole.Link, new() { Name = "Next" }).ClickAsync();
        }
        await Expect(tour).ToContainTextAsync("8 of 8");
        await tour.GetByRole(AriaRole.Link, new() { Name = "End the tour" }).ClickAsync();

        await Expect(tour).ToHaveCountAsync(0);
    }

    private static async Task FitsAsync(Visit visit)
    {
        (await visit.Page.RunAxe()).Violations.Select(violation => $"{violation.Id}: {violation.Nodes[0].Html}").ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
    }
}
