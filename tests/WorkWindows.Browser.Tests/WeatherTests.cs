using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>Chances and the weather of a parcel, with the records of the demo.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class WeatherTests(SiteFixture site)
{
    [Fact]
    public async Task Season_TellsChances_InARowOfBarsAndInSentences()
    {
        await using var visit = await site.OpenDemoAsync(Screen.Desktop);

        await Expect(visit.Page.GetByRole(AriaRole.Img, new() { NameRegex = ChanceOfEachDay() })).ToBeVisibleAsync();
        await Expect(visit.Page.Locator(".days-of-chance title").First).ToHaveTextAsync(DayAndChance());
        await Expect(visit.Page.GetByText("past years (")).ToHaveCountAsync(2);
        await Expect(visit.Page.GetByText("It closes, for two weeks or more,")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("in the mean of the years")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Leaf-out comes between")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Season_SaysWhyNoChanceIsTold_WithAShortRecord()
    {
        await using var visit = await site.OpenAsync(
            Screen.Phone, Scenario.Consultant, $"/tasks/{site.Scenario.HingeCut}");

        await Expect(visit.Page.GetByText("it takes 15 past years")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator(".band.chance")).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData("desktop")]
    [InlineData("phone")]
    public async Task Weather_DrawsAheadMeasuredAndHeat_AndTellsThemInTables(string screen)
    {
        await using var visit = await DemoWeatherAsync(screen);

        foreach (var chart in new[] { "#fan", "#measured", "#heat-chart" })
            await Expect(visit.Page.Locator($"{chart} canvas")).ToBeVisibleAsync();
        await visit.Page.GetByText("The days ahead as a table").ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Cell, new() { Name = "eight past years in ten" }).First).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("leaf-out needs 209 °F-days")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("a blended minimum is off by")).ToBeVisibleAsync();
        await visit.Page.GetByText("The lines across").ClickAsync();
        await Expect(visit.Page.GetByText("minimum temperature below 20 °F closes: Hinges snap")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Weather_ShowsLongerRanges_AndZoomsWhereItIsDragged()
    {
        await using var visit = await DemoWeatherAsync("desktop");
        foreach (var (range, text) in new[] { ("1 year", "each day"), ("5 years", "each week"), ("All", "each month") })
        {
            await visit.Page.GetByRole(AriaRole.Link, new() { Name = range, Exact = true }).ClickAsync();
            await Expect(visit.Page.GetByText($"maximum{(range == "1 year" ? ", " : " of ")}{text}").First).ToBeVisibleAsync();
            await Expect(visit.Page.Locator("[aria-current=true]")).ToHaveTextAsync(range);
        }
        (await visit.Page.ContentAsync()).Length.ShouldBeLessThan(100_000);

        var chart = (await visit.Page.Locator("#measured .u-over").BoundingBoxAsync())!;
        await visit.Page.Mouse.MoveAsync(chart.X + 100, chart.Y + 60);
        await Expect(visit.Page.Locator("#measured-readout")).ToHaveTextAsync(MonthAndValues());
        await visit.Page.Mouse.DownAsync();
        await visit.Page.Mouse.MoveAsync(chart.X + 400, chart.Y + 60, new() { Steps = 5 });
        await visit.Page.Mouse.UpAsync();
        await Expect(visit.Page.Locator("#measured-readout")).ToContainTextAsync(
            "Zoomed in: double-click to see all again.");
        await visit.Page.Mouse.DblClickAsync(chart.X + 200, chart.Y + 60);
        await Expect(visit.Page.Locator("#measured-readout")).Not.ToContainTextAsync("Zoomed in");
    }

    private async Task<Visit> DemoWeatherAsync(string screen)
    {
        var visit = await site.OpenDemoAsync(Screen.Named(screen));
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "The weather of" }).ClickAsync();
        return visit;
    }

    [GeneratedRegex("^Chance of each day: half or more on [1-9]")]
    private static partial Regex ChanceOfEachDay();

    [GeneratedRegex("^Tue 3 Feb: ")]
    private static partial Regex DayAndChance();

    [GeneratedRegex(@"^month from \w+ \d\d \w+ \d{4}: lowest minimum -?\d+ °F, highest maximum \d+ °F$")]
    private static partial Regex MonthAndValues();
}
