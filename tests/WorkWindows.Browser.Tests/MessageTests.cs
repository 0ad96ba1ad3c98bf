using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant looks after messages that reached nobody, on a phone that runs no scripts.</summary>
[Collection(SiteCollection.Name)]
public sealed class MessageTests(SiteFixture site)
{
    private static readonly Screen SmallPhone = new("small-phone", 360, 740);

    [Fact]
    public async Task DeadLetters_AreSentAgain_TheOneThatBouncesOnceItsAddressWorks()
    {
        await using var visit = await site.OpenAsync(SmallPhone, MessageScenario.Consultant, scripts: false);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "2 messages reached nobody" }).ClickAsync();

        await Expect(Letter(visit, MessageScenario.Refused)).ToContainTextAsync("after 10 attempts");
        await Expect(Letter(visit, MessageScenario.Refused)).ToContainTextAsync("The mail server refused the message (status 554).");
        await CheckAsync(visit);
        await visit.TakePictureAsync("messages-small-phone");
        await Letter(visit, MessageScenario.Refused).GetByRole(AriaRole.Button).ClickAsync();
        await Expect(Letter(visit, MessageScenario.Refused)).ToHaveCountAsync(0);

        await Letter(visit, MessageScenario.Bounced).GetByRole(
            AriaRole.Button, new() { Name = "The address works again: gone@example.org" }).ClickAsync();
        await Letter(visit, MessageScenario.Bounced).GetByRole(
            AriaRole.Button, new() { Name = $"Send again: {MessageScenario.Bounced}, to gone@example.org" }).ClickAsync();

        await Expect(visit.Page.GetByText("Nothing was given up.")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Listitem)).ToHaveTextAsync(
            [new System.Text.RegularExpressions.Regex(MessageScenario.Bounced), new(MessageScenario.Refused)]);
        await CheckAsync(visit);
    }

    private static ILocator Letter(Visit visit, string subject) =>
        visit.Page.GetByRole(AriaRole.Article).Filter(new() { HasText = subject });

    /// <summary>Nothing hinders a reader, and nothing is wider than the screen.</summary>
    private async Task CheckAsync(Visit visit)
    {
        // The page under test runs no scripts, so another window of the same reader is looked at.
        await using var scripted = await site.OpenAsync(
            SmallPhone, MessageScenario.Consultant, new Uri(visit.Page.Url).PathAndQuery);
        (await scripted.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await scripted.Page.EvaluateAsync<int>("document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(360);
    }
}
