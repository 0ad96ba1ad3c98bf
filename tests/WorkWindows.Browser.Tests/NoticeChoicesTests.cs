using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

[Collection(SiteCollection.Name)]
public sealed class NoticeChoicesTests(SiteFixture site)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("desktop")]
    public async Task Landowner_ChoosesWhatToBeTold(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.Newcomer);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Notices" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Checkbox, new() { Name = "Season ends early, by mail" }).UncheckAsync();
        await visit.Page.GetByLabel("Tell temperatures in").SelectOptionAsync("°C");
        await visit.Page.GetByLabel("From", new() { Exact = true }).FillAsync("21:00");
        await visit.Page.GetByLabel("Until", new() { Exact = true }).FillAsync("07:00");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("Saved.");
        await Expect(visit.Page.GetByRole(AriaRole.Checkbox, new() { Name = "Season ends early, by mail" })).Not.ToBeCheckedAsync();
        await Expect(visit.Page.GetByLabel("Tell temperatures in")).ToHaveValueAsync("celsius");
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
        await visit.TakePictureAsync($"notices-{screen}");
        await visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Get a") }).ClickAsync();
        await Expect(visit.Page.Locator("code.address")).ToContainTextAsync("/calendars/");
    }
}
