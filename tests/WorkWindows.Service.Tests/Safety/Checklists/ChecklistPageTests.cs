using System.Net;
using System.Text.RegularExpressions;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Safety.Checklists;

/// <summary>The pages as a browser without scripts sees them.</summary>
public sealed partial class ChecklistPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Release_IsShownOnEachPageOfTheCrew_AndNotToALandowner()
    {
        var given = await GivenChecklist.OpenAsync(service);
        string[] pages =
        [
            "/week", $"/tasks/{given.Task}/days/{GivenChecklist.Day}", $"/tasks/{given.Task}/checklist",
            $"/tasks/{given.Task}/watch", $"/tasks/{given.Task}/briefing",
        ];

        foreach (var page in pages)
            (await ReadAsync(given, page)).ShouldContain($"Not released: the crew lead, {given.LeadName}, has not signed");
        await given.SignAsync();
        foreach (var page in pages)
        {
            (await ReadAsync(given, page))
                .ShouldContain($"Released: {given.LeadName} signed the checklist Sat 1 Mar 2025, 6:50.");
        }
        var (landowner, id) = await given.AddAsync(Role.Landowner);
        await SetOwnerAsync(given, id);
        foreach (var page in pages[..3])
            (await landowner.GetStringAsync(page)).ShouldNotContain(given.LeadName);
    }

    [Fact]
    public async Task Form_SignsWithoutScripts_Once()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var fields = await FieldsAsync(given);

        using var first = await given.Lead.PostFormAsync(Page(given), new(fields));
        using var second = await given.Lead.PostFormAsync(Page(given), new(fields));

        (first.StatusCode, second.StatusCode).ShouldBe((HttpStatusCode.Redirect, HttpStatusCode.Redirect));
        (await given.StoredAsync()).ShouldBe(1);
        (await ReadAsync(given, Page(given))).ShouldContain($"T. Vance ({given.LeadName}), Sat 1 Mar 2025, 7:00");
    }

    [Fact]
    public async Task Form_ShowsWhatHasChanged_AndKeepsTheOtherTicks()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var fields = await FieldsAsync(given);
        await given.ChangeListAsync();

        using var answer = await given.Lead.PostFormAsync(Page(given), fields);
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        html.ShouldContain("The checklist has changed since it was shown. Read what is new, and sign again.");
        html.ShouldContain("Changed: Steep ground, where stems may roll or slide: keep more than two tree lengths between "
            + "crews. Before: Keep two tree lengths between crews, more on slopes.");
        var lines = fields.Keys.Count(field => field.EndsWith(".Done", StringComparison.Ordinal));
        html.Split("checked=\"checked\"").Length.ShouldBe(lines);
        (await given.StoredAsync()).ShouldBe(0);
    }

    [Fact]
    public async Task Landowner_ReadsTheList_AndCannotSign()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (landowner, id) = await given.AddAsync(Role.Landowner);
        await SetOwnerAsync(given, id);

        var html = await landowner.GetStringAsync(Page(given));

        html.ShouldContain("Wear a face shield");
        html.ShouldNotContain("id=\"acknowledge\"");
        using var answer = await landowner.PostFormAsync(Page(given), new() { ["Entry.Name"] = "Amos" });
        answer.StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Page_OffersAConsultantToStandInForTheLead_AndNobodyElse()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (consultant, _) = await given.AddAsync(Role.Consultant);
        var fields = await FieldsAsync(given);
        fields["Entry.InsteadBecause"] = "The lead is ill today.";

        (await ReadAsync(given, Page(given))).ShouldNotContain("in place of the crew lead");
        WebUtility.HtmlDecode(await consultant.GetStringAsync(Page(given)))
            .ShouldContain($"Release it in place of the crew lead, {given.LeadName}");
        using var answer = await consultant.PostFormAsync(Page(given), fields);

        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await ReadAsync(given, Page(given))).ShouldContain("in place of the crew lead: The lead is ill today.");
        (await given.ReleaseAsync()).ShouldBe("released");
    }

    [Fact]
    public async Task ClosedDay_HasNoForm_AndSaysWhy()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var html = await ReadAsync(given, $"/tasks/{given.Task}/checklist?date=2025-10-15");

        html.ShouldContain("Cannot be released. Closed on Wed 15 Oct.");
        html.ShouldNotContain("id=\"acknowledge\"");
    }

    [Fact]
    public async Task Pages_TellTemperaturesInTheReadersScale_AndWhatIsSignedStaysTheSame()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var day = $"/tasks/{given.Task}/days/{GivenChecklist.Day}";
        var signed = await given.FormAsync();
        (await ReadAsync(given, day)).ShouldContain("°F");

        await given.Lead.PutAsync($"/api/people/{given.LeadId}/notices", new { temperatures = "celsius" });

        foreach (var page in new[] { day, Page(given), $"/tasks/{given.Task}/briefing", $"/tasks/{given.Task}/watch" })
        {
            var shown = Hidden().Replace(await ReadAsync(given, page), "");
            shown.ShouldNotContain("°F", customMessage: page);
        }
        (await ReadAsync(given, Page(given))).ShouldContain("Wind chill down to ");
        (await given.FormAsync()).Items.ShouldBe(signed.Items);
        (await given.SignAsync()).GetProperty("release").Text("state").ShouldBe("released");
    }

    /// <summary>What no reader sees, and sources, which stay as their documents have them.</summary>
    [GeneratedRegex("""(data-text|value)="[^"]*"|<small>.*?</small>|<p class="source">.*?</p>""", RegexOptions.Singleline)]
    private static partial Regex Hidden();

    private static string Page(GivenChecklist given) => $"/tasks/{given.Task}/checklist";

    private static async Task<string> ReadAsync(GivenChecklist given, string page) =>
        WebUtility.HtmlDecode(await given.Lead.GetStringAsync(page));

    /// <summary>The form as a browser would send it, every line ticked.</summary>
    private static async Task<Dictionary<string, string>> FieldsAsync(GivenChecklist given)
    {
        var form = await given.FormAsync();
        var fields = new Dictionary<string, string>
        {
            ["Entry.Key"] = $"{form.Key}",
            ["Entry.Version"] = form.Version!,
            ["Entry.Name"] = form.Name!,
        };
        foreach (var (line, index) in form.Items!.Select((line, index) => (line, index)))
        {
            fields[$"Entry.Items[{index}].Id"] = line.Id!;
            fields[$"Entry.Items[{index}].Text"] = line.Text!;
            fields[$"Entry.Items[{index}].Done"] = "true";
        }
        return fields;
    }

    private static async Task SetOwnerAsync(GivenChecklist given, Guid landowner)
    {
        await using var db = given.Office.Service.Database.Open(given.Office.Organization);
        db.Properties.Single().LandownerId = landowner;
        await db.SaveChangesAsync();
    }
}
