using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>What a consultant does before work starts.</summary>
[Collection(SiteCollection.Name)]
public sealed partial class ConsultantTests(SiteFixture site)
{
    [Fact]
    public async Task SignIn_SaysWhatIsWrong_ThenShowsTheWeek_AndSignOutEndsIt()
    {
        await using var visit = await site.OpenAsync(Screen.Desktop);
        await visit.SignInAsync(Scenario.Consultant, "not the password");
        await Expect(visit.Page.GetByRole(AriaRole.Alert))
            .ToContainTextAsync("Mail address and password do not match.");

        await visit.SignInAsync(Scenario.Consultant);
        await Expect(visit.Page).ToHaveURLAsync(MorningAddress());
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Expect(Heading(visit, "Sign in")).ToBeVisibleAsync();

        await visit.Page.GotoAsync("/week");
        await Expect(Heading(visit, "Sign in")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("desktop")]
    [InlineData("phone")]
    public async Task Week_ShowsTheStatesOfTenDays(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.Consultant);

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(
            "4 of 5 tasks may be done today. For 1, something is not known: do not start it.");
        var hingeCut = Task(visit, "Hinge cut");
        await Expect(hingeCut.GetByRole(AriaRole.Listitem).GetByRole(AriaRole.Link)).ToHaveTextAsync(
        [
            "Tue 3 Feb: open", "Wed 4 Feb: limited", "Thu 5 Feb: limited", "Fri 6 Feb: closed, scheduled",
            "Sat 7 Feb: open", "Sun 8 Feb: closed", "Mon 9 Feb: open",
            "Tue 10 Feb: unknown", "Wed 11 Feb: unknown", "Thu 12 Feb: unknown",
        ]);
        await Expect(hingeCut).ToContainTextAsync(
            "Open or limited until Thu 5 Feb, then closed: Hinges snap in a hard freeze");
        await Expect(hingeCut).ToContainTextAsync("Scheduled Fri 6 Feb: closed");
        await Expect(Task(visit, "Tie-down").GetByRole(AriaRole.Listitem).GetByRole(AriaRole.Link)).ToHaveTextAsync(
        [
            "Tue 3 Feb: open", "Wed 4 Feb: open", "Thu 5 Feb: open", "Fri 6 Feb: open", "Sat 7 Feb: open",
            "Sun 8 Feb: closed", "Mon 9 Feb: open", "Tue 10 Feb: unknown", "Wed 11 Feb: unknown", "Thu 12 Feb: unknown",
        ]);
        await Expect(Task(visit, "Overstory felling"))
            .ToContainTextAsync("Not known today: maximum temperature, the stand's species and 6 more");
    }

    [Fact]
    public async Task Filter_LeavesOutWhatWasNotAskedFor()
    {
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Consultant);
        await visit.Page.GetByLabel("Workable today").CheckAsync();
        await visit.Page.GetByLabel("Property").SelectOptionAsync("Quill Farm");
        await visit.Page.GetByLabel("Practice").SelectOptionAsync("Girdling");
        await Show(visit).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 3 })).ToHaveTextAsync(["Girdling"]);
        await Expect(visit.Page.GetByLabel("Workable today")).ToBeCheckedAsync();

        await visit.Page.GetByLabel("Practice").SelectOptionAsync("Overstory felling");
        await Show(visit).ClickAsync();
        await Expect(visit.Page.GetByText("No task matches this filter.")).ToBeVisibleAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Show all tasks" }).ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 3 })).ToHaveCountAsync(5);
    }

    [Theory]
    [InlineData("desktop")]
    [InlineData("phone")]
    public async Task Season_ShowsToday_TheChart_AndAPastYear(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.Consultant);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Hinge cut" }).ClickAsync();

        await Expect(visit.Page.GetByText("Open today", new() { Exact = true })).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("#chart canvas")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Fernhollow mill (USC00990001), 5.8 miles away, 79 ft lower").First)
            .ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("cccccccccccc")).ToBeHiddenAsync();
        await visit.Page.GetByText("Decisions kept for this task").ClickAsync();
        await Expect(visit.Page.GetByText("cccccccccccc")).ToBeVisibleAsync();

        await visit.Page.GetByLabel("Year").SelectOptionAsync("2025");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Change year" }).ClickAsync();
        await Expect(Heading(visit, "Season 2025")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Img, new() { NameRegex = FullLeaf() })).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("#chart canvas")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("desktop")]
    [InlineData("phone")]
    public async Task Day_TellsTheDecidingRule_ItsNumbersAndItsSource(string screen)
    {
        await using var visit = await site.OpenAsync(Screen.Named(screen), Scenario.Consultant);
        await Task(visit, "Hinge cut").GetByRole(AriaRole.Link, new() { Name = "Sun 8 Feb: closed" }).ClickAsync();

        await Expect(visit.Page.GetByText("Closed on Sun 8 Feb", new() { Exact = true })).ToBeVisibleAsync();
        var breeze = visit.Page.GetByRole(AriaRole.Article).Filter(new() { HasText = "No felling in a fresh breeze" });
        await Expect(breeze).ToContainTextAsync("At 19 mph small trees sway");
        await Expect(breeze).ToContainTextAsync("21 mph");
        await Expect(breeze).ToContainTextAsync("at least 19 mph");
        await Expect(breeze).ToContainTextAsync("past the limit by 2 mph");
        await Expect(breeze).ToContainTextAsync("forecast");
        await Expect(breeze.GetByRole(AriaRole.Link, new() { NameRegex = Beaufort() }))
            .ToHaveAttributeAsync("href", "https://www.weather.gov/tbw/beaufort");
        await Expect(visit.Page.GetByText("Sunrise 7:4")).ToBeVisibleAsync();
        await Expect(breeze).ToContainTextAsync("Lets go on Mon 9 Feb 2026.");
        await Expect(visit.Page.GetByText("it was decided otherwise. 8 Feb 2026: was open, now closed.")).ToBeVisibleAsync();
        await Expect(
            visit.Page.GetByText("sustained wind on 8 Feb 2026: was 4.5 mph (forecast), now 21 mph (forecast)"))
            .ToBeVisibleAsync();

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "← Sat 7 Feb" }).ClickAsync();
        await Expect(visit.Page.GetByText("Open on Sat 7 Feb", new() { Exact = true })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Day_SendsEverybodyHomeInAGale_SawOrNone()
    {
        var gale = $"/tasks/{site.Scenario.TieDown}/days/2026-02-08";
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Consultant, gale);

        await Expect(visit.Page.GetByText("Closed on Sun 8 Feb", new() { Exact = true })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Article).First)
            .ToContainTextAsync("Everybody out of the woods in a near gale");
    }

    [Fact]
    public async Task Season_LeadsToTheDayThatWasPicked_AndToTheChecklist()
    {
        var season = $"/tasks/{site.Scenario.HingeCut}";
        await using var visit = await site.OpenAsync(Screen.Phone, Scenario.Consultant, season);
        await visit.Page.GetByLabel("Day", new() { Exact = true }).FillAsync("2026-02-04");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show its reasons" }).ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(FourthOfFebruary());
        await Expect(visit.Page.GetByText("Limited on Wed 4 Feb: only with these measures")).ToBeVisibleAsync();

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Safety checklist" }).ClickAsync();
        await Expect(visit.Page.GetByText("Try the hinge on the first stem.")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Wear cut-resistant leg protection"))
            .ToContainTextAsync("29 CFR 1910.266, (d)(1)(iv)");
    }

    private static ILocator Heading(Visit visit, string name) =>
        visit.Page.GetByRole(AriaRole.Heading, new() { Name = name, Exact = true });

    private static ILocator Show(Visit visit) =>
        visit.Page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true });

    private static ILocator Task(Visit visit, string practice) =>
        visit.Page.Locator(".tasks > li")
            .Filter(new() { Has = visit.Page.GetByRole(AriaRole.Heading, new() { Name = practice }) });

    [GeneratedRegex("/morning$")]
    private static partial Regex MorningAddress();

    [GeneratedRegex("/days/2026-02-04$")]
    private static partial Regex FourthOfFebruary();

    [GeneratedRegex("full leaf: closes Thu 1 May 2025 to Thu 31 Jul 2025")]
    private static partial Regex FullLeaf();

    [GeneratedRegex("Beaufort 5, 19-24 mph")]
    private static partial Regex Beaufort();
}
