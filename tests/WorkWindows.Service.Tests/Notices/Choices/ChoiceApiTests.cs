using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices.Choices;

public sealed class ChoiceApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly object Full = new
    {
        timeZone = "America/Chicago",
        temperatures = "celsius",
        quietFrom = "21:30",
        quietUntil = "06:45",
        webhookAddress = "https://hooks.example.org/crew",
        ways = new Dictionary<string, string[]> { ["reminder"] = ["webhook", "calendar"], ["certificate"] = [] },
    };

    [Fact]
    public async Task Choices_AreTheUsualOnes_UntilAPersonChooses()
    {
        var given = await OpenAsync();

        var view = await given.Own.ReadAsync(given.Notices);

        (view.Text("temperatures"), view.Text("quietFrom"), view.Text("hasCalendar")).ShouldBe(("fahrenheit", "", "False"));
        Ways(view, "reminder").ShouldBe("mail calendar");
        Ways(view, "stop-work").ShouldBe("mail webhook");
        Ways(view, "good-to-cut").ShouldBeNull("a crew lead owns no land");
    }

    [Fact]
    public async Task Choices_AreKept_WithWhoChoseThem_AndTheSecretIsToldOnce()
    {
        var given = await OpenAsync();

        var saved = await given.Own.PutAsync(given.Notices, Full);
        saved.Text("webhookSecret").ShouldStartWith("whsec_");
        (await given.Own.PutAsync(given.Notices, Full)).Text("webhookSecret").ShouldBe("");
        var read = await given.Consultant.ReadAsync(given.Notices);

        (read.Text("timeZone"), read.Text("temperatures"), read.Text("quietFrom"), read.Text("quietUntil"))
            .ShouldBe(("America/Chicago", "celsius", "21:30", "06:45"));
        (Ways(read, "reminder"), Ways(read, "certificate"), Ways(read, "opening-soon"))
            .ShouldBe(("webhook calendar", "", "mail"));
        await using var db = service.Database.Open(given.Organization);
        var entries = await db.AuditEntries.Where(entry => entry.RowId == given.Person).OrderBy(entry => entry.Id).ToListAsync();
        entries.ShouldAllBe(entry => entry.Kind == AuditKind.NoticeChoice && entry.PersonId == given.Person);
        entries[0].After!.ShouldNotContain("whsec_");
    }

    [Fact]
    public async Task Choices_OfAnother_AreForConsultantsOnly()
    {
        var given = await OpenAsync();
        var other = await service.AddPersonAsync(given.Organization, $"o.{Guid.NewGuid():N}@example.org", Role.CrewMember);

        (await given.Own.GetAsync($"/api/people/{other}/notices")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await given.Consultant.GetAsync($"/api/people/{other}/notices")).StatusCode.ShouldBe(HttpStatusCode.OK);
        var elsewhere = await OpenAsync();
        (await elsewhere.Consultant.GetAsync(given.Notices)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Choices_AreRefusedWhole_WithEachFieldAndWhatIsAccepted()
    {
        var given = await OpenAsync();

        var problem = await given.Own.RefusedAsync(HttpMethod.Put, given.Notices, new
        {
            timeZone = "Michigan",
            temperatures = "kelvin",
            areas = "furlongs",
            quietFrom = "9 pm",
            quietUntil = "07:00",
            webhookAddress = "http://hooks.example.org",
            ways = new Dictionary<string, string[]>
            {
                ["stop-work"] = [],
                ["good-to-cut"] = ["mail"],
                ["reminder"] = ["pigeon"],
                ["certificate"] = ["calendar"],
            },
        }, HttpStatusCode.BadRequest);

        problem.Error("timeZone").ShouldContain("such as America/Detroit");
        problem.Error("temperatures").ShouldContain("'fahrenheit' or 'celsius'");
        problem.Error("areas").ShouldContain("'acres' or 'hectares'");
        problem.Error("quietFrom").ShouldContain("'9 pm' is not accepted: give a time such as 21:00");
        problem.Error("webhookAddress").ShouldContain("begins with https://");
        problem.Error("ways.stop-work").ShouldContain("always goes out");
        problem.Error("ways.good-to-cut").ShouldContain("a kind of notice that the person gets");
        problem.Error("ways.reminder").ShouldContain("'pigeon' is not accepted: give mail, webhook or calendar");
        problem.Error("ways.certificate").ShouldContain("mail or webhook");
        (await given.Own.ReadAsync(given.Notices)).Text("temperatures").ShouldBe("fahrenheit");
    }

    [Fact]
    public async Task Webhook_IsRefused_WhereNothingWouldBeDeliveredToIt()
    {
        var given = await OpenAsync();

        foreach (var address in new[] { "http://127.0.0.1:5000/in", "http://localhost/in" })
        {
            var problem = await given.Own.RefusedAsync(
                HttpMethod.Put, given.Notices, new { temperatures = "celsius", webhookAddress = address },
                HttpStatusCode.BadRequest);
            problem.Error("webhookAddress").ShouldContain("begins with https://");
        }
    }

    [Fact]
    public async Task Page_KeepsTheChoices_AndWhatWasTypedWhenItIsRefused()
    {
        var given = await OpenAsync();

        var saved = await given.Own.PostFormAsync("/notices", new()
        {
            ["Entry.Temperatures"] = "celsius",
            ["Entry.QuietFrom"] = "21:00",
            ["Entry.QuietUntil"] = "07:00",
            ["Entry.Way"] = "reminder:mail",
        });
        (await saved.Content.ReadAsStringAsync()).ShouldContain("Saved.");
        var refused = await given.Own.PostFormAsync("/notices", new()
        {
            ["Entry.Temperatures"] = "celsius",
            ["Entry.WebhookAddress"] = "ftp://hooks.example.org",
        });

        var html = await refused.Content.ReadAsStringAsync();
        html.ShouldContain("is not accepted: give an address that begins with https://");
        html.ShouldContain("value=\"ftp://hooks.example.org\"");
        var view = await given.Own.ReadAsync(given.Notices);
        (view.Text("temperatures"), view.Text("quietFrom"), Ways(view, "reminder"), Ways(view, "opening-soon"))
            .ShouldBe(("celsius", "21:00", "mail", ""));
    }

    private static string? Ways(JsonElement view, string kind) => view.GetProperty("kinds").EnumerateArray()
        .Where(one => one.Text("kind") == kind)
        .Select(one => string.Join(' ', one.GetProperty("ways").EnumerateArray())).SingleOrDefault();

    private async Task<Given> OpenAsync()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var (consultant, lead) = ($"c.{Guid.NewGuid():N}@example.org", $"l.{Guid.NewGuid():N}@example.org");
        await service.AddPersonAsync(organization, consultant, Role.Consultant);
        var person = await service.AddPersonAsync(organization, lead, Role.CrewLead);
        return new(
            organization, person, (await service.SignInAsync(lead)).Client, (await service.SignInAsync(consultant)).Client);
    }

    private sealed record Given(Guid Organization, Guid Person, HttpClient Own, HttpClient Consultant)
    {
        public string Notices => $"/api/people/{Person}/notices";
    }
}
