using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>What a landowner sees, and what not.</summary>
[Collection(SiteCollection.Name)]
public sealed class LandownerTests(SiteFixture site)
{
    [Theory]
    [InlineData("desktop")]
    [InlineData("phone")]
    public async Task Week_ShowsTheirOwnLandOnly(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.Landowner);

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 2 })).ToHaveTextAsync(["Quill Farm"]);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Fri 6 Feb: closed" }).ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Article).First).ToContainTextAsync("3 days in a row so far");
        await Expect(visit.Page.GetByRole(AriaRole.Article).First).ToContainTextAsync("no published source");
    }

    [Theory]
    [InlineData("")]
    [InlineData("/days/2026-02-03")]
    [InlineData("/checklist")]
    public async Task Page_IsNotThere_WhenTheTaskIsOnOthersLand(string page)
    {
        await using var visit = await site.OpenAsync(Screen.Desktop, Scenario.Landowner);

        var answer = await visit.Page.GotoAsync($"/tasks/{site.Scenario.Felling}{page}");

        answer!.Status.ShouldBe(404);
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync("There is no such page");
    }

    [Fact]
    public async Task Weather_IsShownOfTheirOwnLand_AndNotThereForOthers()
    {
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Landowner);

        await visit.Page.GotoAsync($"/parcels/{site.Scenario.Ridge}/weather");
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(
            "Weather of Beech Ridge");
        await Expect(visit.Page.GetByText("Readings that are not used")).ToHaveCountAsync(0);
        var answer = await visit.Page.GotoAsync($"/parcels/{site.Scenario.Swale}/weather");

        answer!.Status.ShouldBe(404);
    }

    [Fact]
    public async Task Week_SaysSo_WhenNothingIsPlanned()
    {
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Newcomer);

        await Expect(visit.Page.GetByText("No work is planned on the properties that you may see.")).ToBeVisibleAsync();
    }
}
