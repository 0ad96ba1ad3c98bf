using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Safety.Checklists;

public sealed class BriefingTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Sheet_SaysWhatIsNotEntered_AndAlwaysHas911()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var html = await ReadAsync(given);

        html.ShouldContain("Call for help: 911");
        foreach (var field in new[] { "Nearest address", "Way in", "Sheriff", "Hospital", "Poison centre", "Power company" })
            html.ShouldContain($"<dt>{field}</dt><dd><b>not entered</b><span class=\"blank\"></span></dd>");
    }

    [Fact]
    public async Task Sheet_HasPlaceCrewDayAndContacts()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.SignAsync();
        await given.Lead.CreateAsync($"/api/tasks/{given.Task}/watches", new
        {
            peopleOnSite = 2,
            contacts = new[] { new { name = "Ada Birch", email = "ada@example.org" } },
        });
        await given.ChangeListAsync();

        var html = await ReadAsync(given);

        html.ShouldContain("<dd>42.602, -84.3975 (a point inside the parcel's boundary)</dd>");
        html.ShouldContain($"<dt>Crew lead</dt><dd>{given.LeadName}</dd>");
        html.ShouldContain("Ada Birch, ada@example.org");
        html.ShouldContain("gusts: 8.9 mph (forecast)");
        html.ShouldContain("Noted: steep slope.");
        html.ShouldContain("Send at least two people, and count them out at the end of the shift.");
        html.ShouldContain("Stop and go to a safe place in lightning");
    }

    [Fact]
    public async Task Numbers_AreEnteredOnThePageByAConsultant_AndStandOnTheSheet()
    {
        var given = await GivenChecklist.OpenAsync(service);
        Dictionary<string, string> fields = new()
        {
            ["Entry.NearestAddress"] = "4410 Mill Road, Larkspur",
            ["Entry.Sheriff"] = "Ingham County, 517-555-0140",
            ["Entry.Hospital"] = "",
        };

        using var refused = await given.Lead.PostFormAsync(Page(given), new(fields));
        using var entered = await given.Office.Consultant.PostFormAsync(Page(given), fields);
        var html = await ReadAsync(given);

        (refused.StatusCode, entered.StatusCode).ShouldBe((HttpStatusCode.Forbidden, HttpStatusCode.Redirect));
        html.ShouldContain("<dd>4410 Mill Road, Larkspur</dd>");
        html.ShouldContain("<dd>Ingham County, 517-555-0140</dd>");
        html.ShouldContain("<dt>Hospital</dt><dd><b>not entered</b>");
    }

    [Fact]
    public async Task WayIn_IsEnteredOnThePage_AndStaysWhereAPageDoesNotSendIt()
    {
        var given = await GivenChecklist.OpenAsync(service);
        const string way = "Second gate past the creek, code 0451. Park at the barn.";

        using var entered = await given.Office.Consultant.PostFormAsync(
            Page(given), new() { ["AccessNotes"] = way, ["Entry.Sheriff"] = "Ingham County, 517-555-0140" });
        entered.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await ReadAsync(given)).ShouldContain($"<dt>Way in</dt><dd>{way}</dd>");
        using var older = await given.Office.Consultant.PostFormAsync(
            Page(given), new() { ["Entry.Sheriff"] = "Ingham County, 517-555-0140" });
        (await ReadAsync(given)).ShouldContain($"<dt>Way in</dt><dd>{way}</dd>");
        using var emptied = await given.Office.Consultant.PostFormAsync(Page(given), new() { ["AccessNotes"] = "" });

        (await ReadAsync(given)).ShouldContain("<dt>Way in</dt><dd><b>not entered</b>");
        using var refused = await given.Office.Consultant.PostFormAsync(
            Page(given), new() { ["AccessNotes"] = new string('x', 4001) });
        WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync()).ShouldContain("at most 4000 characters");
    }

    [Fact]
    public async Task Numbers_AreFieldsOfTheProperty_WhichStayWhereTheyAreNotGiven()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var address = $"/api/properties/{given.Office.Property}";
        var property = await given.Office.Consultant.ReadAsync(address);
        object Form(object? emergency) => new
        {
            name = property.Text("name"),
            countyFips = property.Text("countyFips"),
            state = property.Text("state"),
            emergency,
        };

        await given.Office.Consultant.PutAsync(
            address, Form(new { hospital = "Sparrow, 517-555-0100", poisonCentre = "800-555-0122" }));
        var kept = (await given.Office.Consultant.PutAsync(address, Form(null))).GetProperty("emergency");

        (kept.Text("hospital"), kept.Text("poisonCentre"), kept.Text("sheriff"))
            .ShouldBe(("Sparrow, 517-555-0100", "800-555-0122", ""));
        (await given.Office.Consultant.RefusedAsync(
            HttpMethod.Put, address, Form(new { utility = new string('x', 121) }), HttpStatusCode.BadRequest))
            .Error("emergency.utility").ShouldContain("at most 120 characters");
    }

    [Fact]
    public async Task Sheet_IsForPeopleWhoWork()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (landowner, _) = await given.AddAsync(Role.Landowner);

        (await landowner.GetAsync(Page(given))).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    private static string Page(GivenChecklist given) => $"/tasks/{given.Task}/briefing";

    private static async Task<string> ReadAsync(GivenChecklist given) =>
        WebUtility.HtmlDecode(await given.Lead.GetStringAsync(Page(given)));
}
