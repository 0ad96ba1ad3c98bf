using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A crew checks in on a small phone that runs no scripts.</summary>
[Collection(SiteCollection.Name)]
public sealed class WatchTests(SiteFixture site)
{
    private static readonly Screen SmallPhone = new("small-phone", 360, 740);

    [Fact]
    public async Task LateCrew_SeesThatItIsLookedFor_AndChecksIn_ThenIsOut()
    {
        await using var visit = await site.OpenAsync(
            SmallPhone, WatchScenario.Lead, $"/tasks/{site.Watched.Late}/watch", scripts: false);

        await Expect(visit.Page.GetByText("You are late. You were due at")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Missed check-in" }))
            .ToContainTextAsync("Ada Birch, written to at Tue 3 Feb 2026, 5:15: NOBODY REACHED, only a file");
        await Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Nobody will be called.");
        await visit.TakePictureAsync("watch-late-small-phone");
        await CheckAsync(visit);
        await Button(visit, "I am fine").ClickAsync();

        await Expect(visit.Page.GetByText("Check in by Tue 3 Feb 2026, 7:00")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Missed check-in" })).ToHaveCountAsync(0);
        await CheckAsync(visit);
        await visit.TakePictureAsync("watch-small-phone");
        await Button(visit, "We are out").ClickAsync();
        await Expect(visit.Page.GetByText("The last watch ended Tue 3 Feb 2026, 6:00: the crew was out.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Watch_IsStartedFromTheChecklist_AndNeverForOnePersonAtFelling()
    {
        await using var visit = await site.OpenAsync(
            SmallPhone, WatchScenario.Lead, $"/tasks/{site.Watched.Unwatched}/checklist", scripts: false);
        await Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Nobody alone" }))
            .ToContainTextAsync("R 408.15113(d) and (f)");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Check-ins of the crew" }).ClickAsync();
        await CheckAsync(visit);
        await visit.TakePictureAsync("watch-start-small-phone");

        await visit.Page.GetByLabel("Or a name").First.FillAsync("Ada Birch");
        await visit.Page.GetByLabel("and a mail address").First.FillAsync("ada.birch@example.org");
        await Button(visit, "Start the watch").ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Alert).First)
            .ToContainTextAsync("This work must not be done alone: Michigan forbids working alone when felling or skidding.");

        await visit.Page.GetByLabel("People on site").FillAsync("2");
        await Button(visit, "Start the watch").ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Alert).First)
            .ToContainTextAsync("Not released: the crew lead, Mina Crow, has not signed the checklist.");

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Safety checklist" }).ClickAsync();
        foreach (var box in await visit.Page.GetByRole(AriaRole.Checkbox).AllAsync())
            await box.CheckAsync();
        await visit.Page.GetByLabel("Your name, typed to sign").FillAsync("Mina Crow");
        await Button(visit, "I have read and done each line: sign").ClickAsync();
        await Expect(visit.Page.GetByText("Released: Mina Crow signed the checklist Tue 3 Feb 2026, 6:00."))
            .ToBeVisibleAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Check-ins of the crew" }).ClickAsync();
        await visit.Page.GetByLabel("People on site").FillAsync("2");
        await visit.Page.GetByLabel("Or a name").First.FillAsync("Ada Birch");
        await visit.Page.GetByLabel("and a mail address").First.FillAsync("ada.birch@example.org");
        await Button(visit, "Start the watch").ClickAsync();
        await Expect(Button(visit, "I am fine")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Without a check-in, Ada Birch is written to at Tue 3 Feb 2026, 7:15.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Incidents_AreRecordedOnAPhone()
    {
        await using var visit = await site.OpenAsync(
            SmallPhone, WatchScenario.Lead, $"/tasks/{site.Watched.Late}/incidents", scripts: false);
        await visit.Page.GetByLabel("When, local time of the property").FillAsync("2026-02-03T05:40");
        await visit.Page.GetByLabel("What happened").FillAsync("A hung limb came down two steps from the feller.");
        await visit.Page.GetByLabel("Who was told").FillAsync("Ada Birch");
        await CheckAsync(visit);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Record it" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Article)).ToContainTextAsync("Recorded Tue 3 Feb 2026, 6:00 by Mina Crow");
        await CheckAsync(visit);
        await visit.TakePictureAsync("incidents-small-phone");
    }

    private static ILocator Button(Visit visit, string name) =>
        visit.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    /// <summary>Nothing hinders a reader, and nothing is wider than the screen.</summary>
    private async Task CheckAsync(Visit visit)
    {
        // The page under test runs no scripts, so another window of the same reader is looked at.
        await using var scripted = await site.OpenAsync(
            SmallPhone, WatchScenario.Lead, new Uri(visit.Page.Url).PathAndQuery);
        (await scripted.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await scripted.Page.EvaluateAsync<int>("document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(360);
    }
}
