using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant looks at land on the map, and draws a parcel.</summary>
[Collection(SiteCollection.Name)]
public sealed class MapTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    [InlineData("dark")]
    public async Task Map_LeadsFromAllLandToABoundary(string screen)
    {
        await using var visit = await OpenAsync(screen);
        await FitsAsync(visit, $"map-all-{screen}");
        await visit.Page.GetByLabel("Property").SelectOptionAsync("Heron Marsh");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await Expect(visit.Page.Locator("path.parcel")).Not.ToHaveCountAsync(0);
        await FitsAsync(visit, $"map-{screen}");

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Boundary of Heron Marsh, Oak ridge" }).ClickAsync();

        await Expect(visit.Page.Locator(".corner")).ToHaveCountAsync(4);
        await FitsAsync(visit, $"boundary-{screen}");
    }

    [Fact]
    public async Task Parcel_IsDrawnWithTheMouse_AndCorrectedWithTheKeyboard()
    {
        await using var visit = await OpenAsync("desktop");
        await visit.Page.GetByLabel("Property").SelectOptionAsync("Heron Marsh");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Heron Marsh, Old landing" }).First.ClickAsync();
        await FitsAsync(visit, "property-desktop");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "New parcel" }).ClickAsync();
        await visit.Page.GetByLabel("Key, as files name it").FillAsync($"drawn-{Guid.NewGuid():N}");
        await visit.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("Drawn");
        foreach (var (x, y) in new[] { (300, 150), (520, 160), (500, 380), (310, 390) })
            await visit.Page.Locator("#drawing").ClickAsync(new() { Position = new() { X = x, Y = y } });
        var corners = visit.Page.GetByLabel("Corners, one a line");
        var drawn = await corners.InputValueAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Corner 2" }).PressAsync("Shift+ArrowRight");
        await Expect(corners).Not.ToHaveValueAsync(drawn);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Corner 4" }).PressAsync("Delete");
        await Expect(visit.Page.Locator(".corner")).ToHaveCountAsync(3);
        await FitsAsync(visit, "new-parcel-desktop");

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add the parcel" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Status).First).ToContainTextAsync("acres");
        (await corners.InputValueAsync()).Trim().Split('\n').Length.ShouldBe(3);
    }

    private static async Task FitsAsync(Visit visit, string name)
    {
        await visit.TakePictureAsync(name);
        (await visit.Page.RunAxe()).Violations.Select(violation => $"{violation.Id}: {violation.Nodes[0].Html}").ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
    }

    private Task<Visit> OpenAsync(string screen) =>
        site.OpenAsync(Screen.Named(screen), Scenario.DemoConsultant, "/map", scripts: true);
}
