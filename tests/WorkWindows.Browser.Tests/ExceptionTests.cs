using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;
using static Microsoft.Playwright.Assertions;

namespace WorkWindows.Browser.Tests;

/// <summary>A consultant answers for an exception to a rule.</summary>
[Collection(SiteCollection.Name)]
public sealed class ExceptionTests(SiteFixture site)
{
    private const string Reason = "No deer has wintered here since the swale was fenced.";

    private string Day => $"/tasks/{site.Excepted}/days/2026-02-12";

    [Fact]
    public async Task Exception_IsMadeWithoutScripts_ShownWithNameReasonAndExpiry_AndWithdrawn()
    {
        await using (var phone = await site.OpenAsync(Screen.Phone, ExceptionScenario.Consultant, Day, scripts: false))
        {
            await Expect(phone.Page.GetByText("Closed on Thu 12 Feb", new() { Exact = true })).ToBeVisibleAsync();
            await phone.Page.GetByText("Make an exception to 'Leave the wintering deer alone'").ClickAsync();
            await phone.Page.GetByLabel("The last day it counts").FillAsync("2028-01-01");
            await phone.Page.GetByLabel("Why it is safe and right here").FillAsync(Reason);
            await phone.TakePictureAsync("exception-form-phone");
            await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Make the exception" }).ClickAsync();

            await Expect(phone.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("from 2026-02-12 to 2027-02-03");
            await Expect(phone.Page.GetByLabel("Why it is safe and right here")).ToHaveValueAsync(Reason);
            await phone.Page.GetByLabel("The last day it counts").FillAsync("2026-02-14");
            await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Make the exception" }).ClickAsync();

            await Expect(phone.Page.GetByText("Limited on Thu 12 Feb: only with these measures")).ToBeVisibleAsync();
            await Expect(phone.Page.GetByRole(AriaRole.Article).First).ToContainTextAsync(
                $"Exception to 'Leave the wintering deer alone' by Ines Holt until 14 Feb 2026: {Reason}");
            await Expect(phone.Page.GetByText("Make an exception")).ToHaveCountAsync(0);
            await phone.TakePictureAsync("exception-day-phone");
        }
        await using var desktop = await site.OpenAsync(
            Screen.Desktop, ExceptionScenario.Consultant, $"/tasks/{site.Excepted}");
        await Expect(desktop.Page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = Reason }))
            .ToContainTextAsync("Thu 12 Feb 2026 to Sat 14 Feb 2026, by Ines Holt");
        await Expect(desktop.Page.GetByText("frost depth 8 in")).ToBeVisibleAsync();
        await desktop.TakePictureAsync("exception-season-desktop");
        (await desktop.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();

        await desktop.Page.GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        await Expect(desktop.Page.GetByText(Reason)).ToHaveCountAsync(0);
        await desktop.Page.GotoAsync(Day);
        await Expect(desktop.Page.GetByText("Closed on Thu 12 Feb", new() { Exact = true })).ToBeVisibleAsync();
        await desktop.Page.GetByText("Make an exception to").ClickAsync();
        await desktop.TakePictureAsync("exception-form-desktop");
        (await desktop.Page.RunAxe()).Violations.Select(violation => violation.Id).ShouldBeEmpty();
    }

    [Fact]
    public async Task Exception_IsOfferedToConsultantsOnly()
    {
        var day = $"/tasks/{site.Scenario.HingeCut}/days/2026-02-06";
        await using var landowner = await site.OpenAsync(Screen.Desktop, Scenario.Landowner, day);

        await Expect(landowner.Page.GetByText("Closed on Fri 6 Feb", new() { Exact = true })).ToBeVisibleAsync();
        await Expect(landowner.Page.GetByText("Make an exception")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Exception_IsNotOffered_OnADayThatIsOver()
    {
        var day = $"/tasks/{site.Excepted}/days/2025-02-06";
        await using var visit = await site.OpenAsync(Screen.Desktop, ExceptionScenario.Consultant, day);

        await Expect(visit.Page.GetByText("Closed on Thu 6 Feb 2025", new() { Exact = true })).ToBeVisibleAsync();
        await Expect(visit.Page.GetByText("Make an exception")).ToHaveCountAsync(0);
    }
}
