using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant plans crews, and a crew writes down what it has done.</summary>
[Collection(SiteCollection.Name)]
public sealed class BoardTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone", "/board")]
    [InlineData("desktop", "/board")]
    [InlineData("phone", "/board/season")]
    [InlineData("desktop", "/board/season")]
    [InlineData("desktop", "/board/print")]
    [InlineData("phone", "/plan")]
    [InlineData("desktop", "/plan")]
    [InlineData("phone", "/crews")]
    [InlineData("desktop", "/crews")]
    [InlineData("phone", "/weights")]
    [InlineData("desktop", "/weights")]
    [InlineData("phone", "/questions")]
    [InlineData("desktop", "/questions")]
    public async Task Pages_AreForEverybody(string screen, string page)
    {
        await using var visit = await OpenDemoAsync(screen, page);

        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync($"{page[1..].Replace('/', '-')}-{screen}");
    }

    [Fact]
    public async Task Card_DraggedToADayOnWhichTheCrewIsOff_StaysWhereItIs_AndSaysWhy()
    {
        await using var visit = await OpenDemoAsync("desktop", "/board");
        var card = visit.Page.Locator("[data-booking]").First;
        var before = await card.GetAttributeAsync("data-booking");

        await card.DragToAsync(visit.Page.Locator("tbody tr").Nth(1).Locator("td").Nth(3));

        await Expect(visit.Page.Locator("#said")).ToContainTextAsync("River crew is off on");
        (await visit.Page.Locator("[data-booking]").First.GetAttributeAsync("data-booking")).ShouldBe(before);
    }

    [Fact]
    public async Task Plan_IsProposed_AndSaysWhatChangesAndWhatIsLeftOut()
    {
        await using var visit = await OpenDemoAsync("desktop", "/plan");

        var propose = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Propose a plan" });
        // Sent nowhere at first, as if the search took long.
        await visit.Page.EvaluateAsync(
            "() => document.querySelector('form[data-long]').addEventListener('submit', event => event.preventDefault())");
        await propose.ClickAsync();
        await Expect(visit.Page.Locator(".busy")).ToContainTextAsync("Looking for the best plan");
        await Expect(propose).ToBeDisabledAsync();
        await visit.Page.ReloadAsync();
        await propose.ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "What changes" })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Publish it" })).ToBeVisibleAsync();
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        await visit.TakePictureAsync("plan-proposed-desktop");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Discard it" }).ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "discarded" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Work_IsRecordedOnAPhone()
    {
        await using var visit = await site.OpenAsync(
            Screen.Phone, Scenario.Consultant, $"/tasks/{site.Scenario.TieDown}/work", scripts: true);
        await visit.Page.GetByLabel("Hours each of them worked").FillAsync("2.5");
        await visit.Page.GetByLabel("Problem met").FillAsync("Wet ground at the gate");
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Record it" }).ClickAsync();

        await Expect(visit.Page.GetByText("Wet ground at the gate")).ToBeVisibleAsync();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync("work-phone");
    }

    private Task<Visit> OpenDemoAsync(string screen, string page) =>
        site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, page);
}
