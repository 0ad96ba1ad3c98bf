using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A crew acknowledges a checklist on a small phone, whose network comes and goes.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class ChecklistTests(SiteFixture site)
{
    private static readonly string[] MayBeEntered =
        ["Nearest address", "Sheriff", "Hospital", "Poison centre", "Power company"];

    private static readonly Screen SmallPhone = new("small-phone", 360, 740);

    [Fact]
    public async Task Checklist_IsAcknowledgedOffline_AndSentWhenTheNetworkIsBack()
    {
        var page = $"/tasks/{site.Watched.Unsigned[0]}/checklist";
        await using var visit = await OpenAsync(WatchScenario.Lead, page);
        await CheckAsync(visit);
        await visit.TakePictureAsync("checklist-small-phone");
        await visit.Page.Locator("#phone[data-kept]").WaitForAsync(new() { State = WaitForSelectorState.Attached });

        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Safety checklist");
        await TickAsync(visit, first: 1);
        await Expect(Phone(visit)).ToHaveTextAsync("Your ticks are kept on this phone. Not signed yet.");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Checkbox).First).ToBeCheckedAsync();
        await TickAsync(visit);
        await SignAsync(visit, "Mina Crow");
        await Expect(Phone(visit)).ToHaveTextAsync("Signed 06:00. Kept on this phone, not sent yet.");
        await Expect(Phone(visit)).ToBeInViewportAsync();
        await Expect(Release(visit)).ToContainTextAsync("Not released");
        await visit.TakePictureAsync("checklist-kept-small-phone");

        await visit.Page.Context.SetOfflineAsync(false);
        await Expect(Phone(visit)).ToHaveTextAsync("Sent 06:00.");
        await Expect(Release(visit)).ToHaveTextAsync("Released: Mina Crow signed the checklist Tue 3 Feb 2026, 6:00.");
        await CheckAsync(visit);
        await visit.Page.GotoAsync(page);
        await Expect(visit.Page.GetByText("Mina Crow (Mina Crow), Tue 3 Feb 2026, 6:00")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Signature_OfSomebodyElse_StaysOnThePhone_UntilTheySignInAgain()
    {
        var page = $"/tasks/{site.Watched.Unsigned[1]}/checklist";
        await using var visit = await OpenAsync(null, "/sign-in");
        await visit.SignInAsync(WatchScenario.Lead);
        await visit.Page.GotoAsync(page);
        await TickAsync(visit);
        await visit.Page.RouteAsync("**/signatures", route => route.AbortAsync());
        await SignAsync(visit, "Mina Crow");
        await Expect(Phone(visit)).ToHaveTextAsync("Signed 06:00. Kept on this phone, not sent yet.");
        await visit.Page.UnrouteAsync("**/signatures");
        await Button(visit, "Sign out").ClickAsync();
        await visit.SignInAsync(WatchScenario.Member);
        await visit.Page.GotoAsync(page);

        await Expect(Phone(visit)).ToHaveTextAsync(
            "A signature of Mina Crow is kept on this phone. It is sent when Mina Crow signs in.");
        await Expect(visit.Page.GetByRole(AriaRole.Checkbox).First).Not.ToBeCheckedAsync();
        await Expect(Release(visit)).ToContainTextAsync("has not signed");
        await Button(visit, "Sign out").ClickAsync();
        await visit.SignInAsync(WatchScenario.Lead);
        await visit.Page.GotoAsync(page);

        await Expect(Phone(visit)).ToHaveTextAsync("Sent 06:00.");
        await Expect(Release(visit)).ToContainTextAsync("Released: Mina Crow signed");
    }

    [Fact]
    public async Task PageThatWasLeftOpen_SendsNothingUnderAnotherName()
    {
        var page = $"/tasks/{site.Watched.Unsigned[2]}/checklist";
        await using var visit = await OpenAsync(null, "/sign-in");
        await visit.SignInAsync(WatchScenario.Lead);
        await visit.Page.GotoAsync(page);
        await TickAsync(visit);
        var other = await visit.Page.Context.NewPageAsync();
        await using var second = new Visit(other);
        await other.GotoAsync("/week");
        await Button(second, "Sign out").ClickAsync();
        await second.SignInAsync(WatchScenario.Member);
        await Expect(other).ToHaveURLAsync(new Regex("/week$"));

        await SignAsync(visit, "Mina Crow");

        await Expect(Phone(visit)).ToContainTextAsync("Somebody else signed this on the phone");
        await Expect(Phone(visit)).ToContainTextAsync("Kept on this phone, not sent yet.");
        await other.GotoAsync(page);
        await Expect(other.GetByText("Signed", new() { Exact = true })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Signature_ThatIsRefused_StaysOnThePhone_UntilItIsTriedAgainOrDropped()
    {
        var task = site.Watched.Unsigned[3];
        await using var visit = await OpenAsync(WatchScenario.Lead, $"/tasks/{task}/checklist");
        await TickAsync(visit);
        await visit.Page.RouteAsync("**/signatures", route => route.FulfillAsync(new() { Status = 404 }));
        await SignAsync(visit, "Mina Crow");

        const string notTaken = "NOT SIGNED. What you signed on Tue 3 Feb 2026 at 06:00 was not taken. "
            + "The task is not there any more, or not shown to you any more.";
        await Expect(Phone(visit)).ToContainTextAsync(notTaken);
        await Expect(Phone(visit)).ToContainTextAsync("Ask your office.");
        await Expect(Phone(visit)).ToBeInViewportAsync();
        await CheckAsync(visit);
        await visit.TakePictureAsync("checklist-refused-small-phone");
        await visit.Page.GotoAsync("/week");
        await Expect(Phone(visit)).ToContainTextAsync(notTaken);
        await CheckAsync(visit);
        await visit.TakePictureAsync("week-refused-small-phone");
        await Button(visit, "Try again").ClickAsync();
        await Expect(Phone(visit)).ToContainTextAsync(notTaken);

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Open its checklist" }).ClickAsync();
        await visit.Page.UnrouteAsync("**/signatures");
        await Button(visit, "Try again").ClickAsync();
        await Expect(Phone(visit)).ToHaveTextAsync("Sent 06:00.");
        await Expect(Release(visit)).ToContainTextAsync("Released: Mina Crow signed");
    }

    [Fact]
    public async Task Signature_OfAPhoneWhoseClockIsWrong_IsSignedOnceItIsRight_OrDropped()
    {
        await using var visit = await OpenAsync(WatchScenario.Lead, $"/tasks/{site.Watched.Unsigned[4]}/checklist");
        await visit.Page.Clock.SetFixedTimeAsync("2026-01-20T11:00:00Z");
        await TickAsync(visit);
        await SignAsync(visit, "Mina Crow");

        await Expect(Phone(visit)).ToContainTextAsync("The clock of this phone is wrong: it says Tue 20 Jan 2026.");
        await Expect(Phone(visit)).Not.ToContainTextAsync("T11:00");
        await Expect(Release(visit)).ToContainTextAsync("has not signed");
        visit.Page.Dialog += (_, dialog) => dialog.AcceptAsync();
        await Button(visit, "Drop it").ClickAsync();
        await Expect(Button(visit, "Drop it")).ToHaveCountAsync(0);
        await SignAsync(visit, "Mina Crow");
        await visit.Page.Clock.SetFixedTimeAsync("2026-02-03T11:00:00Z");
        await Button(visit, "Try again").ClickAsync();

        await Expect(Phone(visit)).ToHaveTextAsync("Sent 06:00.");
    }

    [Fact]
    public async Task Signature_OfAListThatHasChangedSince_IsShown_WithItsTicks_UntilTheListIsSignedAnew()
    {
        await using var visit = await OpenAsync(WatchScenario.Lead, $"/tasks/{site.Watched.Unsigned[5]}/checklist");
        await TickAsync(visit);
        await visit.Page.RouteAsync("**/signatures", route => route.FulfillAsync(new()
        {
            Status = 409,
            ContentType = "application/problem+json",
            Body = """
                {"detail": "The checklist has changed.", "changes": [{"id": "look", "was": null, "now": "Look up."}]}
                """,
        }));
        await SignAsync(visit, "Mina Crow");

        await Expect(Phone(visit)).ToContainTextAsync("The list had changed by the time that it was sent.");
        await Expect(Phone(visit)).ToContainTextAsync("Read what is new on the list, tick it, and sign again.");
        await Expect(visit.Page.GetByRole(AriaRole.Checkbox).Last).ToBeCheckedAsync();
        await visit.Page.UnrouteAsync("**/signatures");
        await SignAsync(visit, "Mina Crow");

        await Expect(Phone(visit)).ToHaveTextAsync("Sent 06:00.");
        (await visit.Page.EvaluateAsync<int>(
            "Object.keys(localStorage).filter(key => key.startsWith('ww-signed:')).length")).ShouldBe(0);
    }

    [Fact]
    public async Task Kept_ChecklistIsGone_WhenItsReaderHasSignedOut()
    {
        var page = $"/tasks/{site.Watched.Unsigned[2]}/checklist";
        await using var visit = await OpenAsync(null, "/sign-in");
        await visit.SignInAsync(WatchScenario.Lead);
        await visit.Page.GotoAsync(page);
        await visit.Page.Locator("#phone[data-kept]").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await Button(visit, "Sign out").ClickAsync();
        await Expect(visit.Page.GetByLabel("Mail address")).ToBeVisibleAsync();

        (await visit.Page.EvaluateAsync<bool>(
            "async page => await (await caches.open('ww-pages')).match(page) === undefined", page)).ShouldBeTrue();
    }

    [Fact]
    public async Task Briefing_PrintsOnOnePage_WithNothingEntered_AndWithAsMuchAsCanBe()
    {
        await using var visit = await site.OpenAsync(SmallPhone, Scenario.DemoConsultant);
        await visit.Page.GotoAsync(await LongestAsync(visit));
        await Expect(visit.Page.Locator("dd b").GetByText("not entered")).ToHaveCountAsync(MayBeEntered.Length + 2);
        await CheckAsync(visit);
        await visit.TakePictureAsync("briefing-small-phone");
        PagesOf(await visit.PrintAsync("briefing")).ShouldBe(1);

        foreach (var label in MayBeEntered)
            await visit.Page.GetByLabel(label).FillAsync($"{new string('w', 59)} {new string('m', 60)}");
        await Button(visit, "Enter").ClickAsync();
        await Expect(visit.Page.Locator("dd b").GetByText("not entered")).ToHaveCountAsync(2);
        await CheckAsync(visit);

        PagesOf(await visit.PrintAsync("briefing-entered")).ShouldBe(1);
    }

    /// <summary>The briefing of the demo's task and day of the next ten with the most lines.</summary>
    private static async Task<string> LongestAsync(Visit visit)
    {
        var tasks = await visit.Page.EvaluateAsync<string[]>("""
            async () => {
              const tasks = await (await fetch("/api/tasks")).json();
              let longest = ["", 0];
              for (const task of tasks) {
                for (const day of ["2026-02-03", "2026-02-04", "2026-02-06", "2026-02-08"]) {
                  const list = await (await fetch(`/api/tasks/${task.id}/checklists/${day}`)).json();
                  if (list.items.length > longest[1])
                    longest = [`/tasks/${task.id}/briefing?date=${day}`, list.items.length];
                }
              }
              return [longest[0]];
            }
            """);
        return tasks[0];
    }

    private async Task<Visit> OpenAsync(string? email, string path)
    {
        var visit = email is null ? await site.OpenAsync(SmallPhone) : await site.OpenAsync(SmallPhone, email);
        await visit.Page.Clock.SetFixedTimeAsync("2026-02-03T11:00:00Z");
        await visit.Page.GotoAsync(path);
        return visit;
    }

    private static async Task TickAsync(Visit visit, int? first = null)
    {
        var boxes = await visit.Page.GetByRole(AriaRole.Checkbox).AllAsync();
        foreach (var box in boxes.Take(first ?? boxes.Count))
            await box.CheckAsync();
    }

    private static async Task SignAsync(Visit visit, string name)
    {
        await visit.Page.GetByLabel("Your name, typed to sign").FillAsync(name);
        await Button(visit, "I have read and done each line: sign").ClickAsync();
    }

    private static ILocator Phone(Visit visit) => visit.Page.Locator("#phone");

    private static ILocator Release(Visit visit) => visit.Page.Locator("#release");

    private static ILocator Button(Visit visit, string name) =>
        visit.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    /// <summary>Nothing hinders a reader, and nothing is wider than the screen.</summary>
    private static async Task CheckAsync(Visit visit)
    {
        (await visit.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
        (await visit.Page.EvaluateAsync<int>("document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(360);
    }

    private static int PagesOf(byte[] pdf) => PageOfPdf().Count(System.Text.Encoding.Latin1.GetString(pdf));

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PageOfPdf();
}
