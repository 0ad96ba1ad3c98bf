using System.Net;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Safety.Checklists;

/// <summary>Checklists and signatures over the API.</summary>
public sealed class ChecklistApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Checklist_IsThatOfTheTaskAndDay()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var list = await given.Lead.ReadAsync(given.List);

        (list.Text("state"), list.GetProperty("release").Text("state")).ShouldBe(("limited", "not-signed"));
        list.GetProperty("release").Text("statement")
            .ShouldBe($"Not released: the crew lead, {given.LeadName}, has not signed the checklist.");
        var items = list.GetProperty("items").EnumerateArray().ToList();
        items[0].Text("kind").ShouldBe("today");
        items.Select(item => item.Text("id")).ShouldContain("mi.not-alone");
        items.Single(item => item.Text("id") == "saw-legs").Text("source").ShouldBe("29 CFR 1910.266, (d)(1)(iv)");
        var figures = list.GetProperty("figures").EnumerateArray().Select(figure => figure.GetString()).ToList();
        figures.ShouldContain("minimum temperature: 33.8 °F (forecast)");
        figures.ShouldContain("heat index: not known");
        list.GetProperty("cautions").GetArrayLength().ShouldBe(4);
    }

    [Fact]
    public async Task Signature_OfTheLead_ReleasesTheTask_AndKeepsWhatWasShown()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var made = await given.SignAsync();

        made.GetProperty("release").Text("state").ShouldBe("released");
        var signature = made.GetProperty("signature");
        (signature.Text("person"), signature.Text("name")).ShouldBe((given.LeadName, "T. Vance"));
        (signature.Text("signedAt"), signature.Text("receivedAt"))
            .ShouldBe(("2025-03-01T11:50:00Z", "2025-03-01T12:00:00Z"));
        var shown = signature.GetProperty("checklist").GetProperty("items").EnumerateArray().ToList();
        shown.Select(item => item.Text("id")).ShouldContain("first-aid-contents");
        (await given.Office.AuditAsync("?kind=checklist-signature"))
            .ShouldBe([$"checklist-signature by {given.LeadName}: nothing -> row"]);
        (await given.ReleaseAsync()).ShouldBe("released");
    }

    [Fact]
    public async Task Signature_IsStoredOnce_HoweverOftenItIsSent()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync();

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => given.Lead.CreateAsync(given.Signatures, form)));
        await given.ChangeListAsync();
        var late = await given.Lead.CreateAsync(given.Signatures, form);

        answers.Append(late).Select(answer => answer.GetProperty("signature").Text("id")).Distinct().Count().ShouldBe(1);
        (await given.StoredAsync()).ShouldBe(1);
        var (other, _) = await given.AddAsync(Role.CrewMember);
        (await other.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("that of another signature");
    }

    [Fact]
    public async Task Signature_UnderAListThatHasChanged_IsAConflict_WhichSaysWhat_AndNothingIsStored()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync();
        await given.ChangeListAsync();

        var problem = await given.Lead.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.Conflict);

        problem.Text("version").ShouldBe((await given.Lead.ReadAsync(given.List)).Text("version"));
        var change = problem.GetProperty("changes").EnumerateArray().ShouldHaveSingleItem();
        (change.Text("id"), change.Text("was"))
            .ShouldBe(("felling-spacing", "Keep two tree lengths between crews, more on slopes."));
        change.Text("now").ShouldStartWith("Steep ground");
        (await given.StoredAsync()).ShouldBe(0);
        (await given.Office.AuditAsync("?kind=checklist-signature")).ShouldBeEmpty();
    }

    [Fact]
    public async Task Release_IsGone_WhenTheListChangesAfterItWasSigned()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.SignAsync();
        await given.ChangeListAsync();

        (await given.Lead.ReadAsync(given.List)).GetProperty("release").Text("statement").ShouldBe(
            $"Not released: the checklist has changed since {given.LeadName} signed it Sat 1 Mar 2025, 6:50.");
        (await given.SignAsync()).GetProperty("release").Text("state").ShouldBe("released");
        (await given.StoredAsync()).ShouldBe(2);
    }

    [Fact]
    public async Task Signatures_OfOthers_AreStored_AndReleaseNothing_WhereThereIsALead()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (member, _) = await given.AddAsync(Role.CrewMember);
        var (otherLead, _) = await given.AddAsync(Role.CrewLead);

        foreach (var by in new[] { member, otherLead, given.Office.Consultant })
            (await given.SignAsync(by)).GetProperty("release").Text("state").ShouldBe("not-signed");

        (await given.StoredAsync()).ShouldBe(3);
    }

    [Fact]
    public async Task Lead_OfTheCrewThatIsBooked_ReleasesItsDay()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (bookedLead, id) = await given.AddAsync(Role.CrewLead);
        await using (var db = service.Database.Open(given.Office.Organization))
        {
            var crew = new Crew { Name = "South", LeadId = id, HoursPerDay = 8 };
            db.Add(crew);
            db.Add(new Booking
            {
                TaskId = given.Task,
                CrewId = crew.Id,
                Day = new(2025, 3, 1),
                Hours = 4,
                Place = 0,
                IsFixed = false,
            });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await given.SignAsync()).GetProperty("release").Text("state").ShouldBe("not-signed", "another crew works today");
        (await given.SignAsync(bookedLead)).GetProperty("release").Text("state").ShouldBe("released");
    }

    [Fact]
    public async Task Consultant_ReleasesInPlaceOfTheLead_WithAReason_WhichIsShownAndWrittenDown()
    {
        const string why = "Tom broke his wrist. I know the site.";
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync() with { InsteadBecause = why };
        var (otherLead, _) = await given.AddAsync(Role.CrewLead);

        foreach (var by in new[] { otherLead, given.Lead })
        {
            // Whoever is signed in here is no person, or is the lead: neither stands in for them.
            (await by.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.BadRequest))
                .Error("insteadBecause").ShouldContain("Only a consultant");
        }
        var (consultant, id) = await given.AddAsync(Role.Consultant);
        (await consultant.RefusedAsync(
            HttpMethod.Post, given.Signatures, form with { InsteadBecause = "ill" }, HttpStatusCode.BadRequest))
            .Error("insteadBecause").ShouldContain("10 to 500 characters");
        var release = (await consultant.CreateAsync(given.Signatures, form)).GetProperty("release");

        release.Text("state").ShouldBe("released");
        release.Text("statement").ShouldEndWith(
            $"6:50, in place of the crew lead, {given.LeadName}: Tom broke his wrist. I know the site.");
        var entry = (await given.Office.Consultant.ReadAsync("/api/audit?kind=checklist-signature"))
            .EnumerateArray().ShouldHaveSingleItem();
        (entry.Text("personId"), entry.GetProperty("after").Text("insteadBecause")).ShouldBe(($"{id}", why));
        await given.ChangeListAsync();
        (await given.ReleaseAsync()).ShouldBe("changed-since-signed");
    }

    [Fact]
    public async Task Consultant_Releases_WhereNoLeadIsSet()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var task = await Land.TaskAsync(given.Office.Consultant, given.Office.Parcel, "hinge-cut");
        var without = given with { Task = task.Id() };

        (await without.Lead.ReadAsync(without.List)).GetProperty("release").Text("statement")
            .ShouldBe("Not released: no crew lead is set, and no consultant has signed the checklist.");
        (await without.SignAsync()).GetProperty("release").Text("state").ShouldBe("not-signed");
        (await without.SignAsync(given.Office.Consultant)).GetProperty("release").Text("state").ShouldBe("released");
    }

    [Fact]
    public async Task Signature_OfOnePerson_IsNeverStoredUnderTheNameOfAnother()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync() with { PersonId = given.LeadId };
        var (member, _) = await given.AddAsync(Role.CrewMember);
        var stranger = await GivenChecklist.OpenAsync(service);

        foreach (var by in new[] { member, stranger.Lead })
        {
            (await by.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.Forbidden))
                .Text("detail").ShouldContain("Somebody else signed this on the phone");
        }
        (await given.StoredAsync()).ShouldBe(0);
        await given.Lead.CreateAsync(given.Signatures, form);
    }

    [Fact]
    public async Task Signatures_AreForPeopleWhoWork_OfTheOrganization_ByName()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync();
        var machine = await service.MachineAsync(given.Office.Organization);
        var (landowner, _) = await given.AddAsync(Role.Landowner);
        var stranger = await GivenChecklist.OpenAsync(service);

        (await machine.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.Forbidden))
            .Text("detail").ShouldContain("somebody of the crew or a consultant who has signed in");
        await landowner.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.Forbidden);
        await stranger.Lead.RefusedAsync(HttpMethod.Post, given.Signatures, form, HttpStatusCode.NotFound);
        await stranger.Lead.RefusedAsync(HttpMethod.Get, given.List, null, HttpStatusCode.NotFound);
        (await machine.ReadAsync(given.Signatures)).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Signature_MustAcknowledgeEveryLine_AsItStands()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync();
        var part = form with { Items = [.. form.Items!.Where(line => line.Id != "saw-legs")] };
        var other = form with
        {
            Items = [.. form.Items!.Select(line => line.Id == "eyes" ? line with { Text = "No." } : line)],
        };

        (await given.Lead.RefusedAsync(HttpMethod.Post, given.Signatures, part, HttpStatusCode.BadRequest))
            .Error("items").ShouldContain("'saw-legs' is not acknowledged");
        (await given.Lead.RefusedAsync(HttpMethod.Post, given.Signatures, other, HttpStatusCode.BadRequest))
            .Error("items").ShouldContain("'eyes' is not acknowledged");
        (await given.StoredAsync()).ShouldBe(0);
    }

    [Theory]
    [InlineData("key", "made for this signature")]
    [InlineData("version", "64 characters")]
    [InlineData("items", "every line of the list")]
    [InlineData("name", "the name of whoever signs")]
    [InlineData("signedAt", "at most 2 days from now")]
    public async Task Sign_NamesWhatIsNotAccepted(string field, string accepted)
    {
        var given = await GivenChecklist.OpenAsync(service);
        var form = await given.FormAsync();
        var bad = field switch
        {
            "key" => form with { Key = null },
            "version" => form with { Version = "1" },
            "items" => form with { Items = [] },
            "name" => form with { Name = " " },
            _ => form with { SignedAt = "2025-03-03T12:00:01Z" },
        };

        (await given.Lead.RefusedAsync(HttpMethod.Post, given.Signatures, bad, HttpStatusCode.BadRequest))
            .Error(field).ShouldContain(accepted);
    }

    [Theory]
    [InlineData("2025-02-27", HttpStatusCode.UnprocessableEntity)]
    [InlineData("2025-03-09", HttpStatusCode.UnprocessableEntity)]
    [InlineData("1 March", HttpStatusCode.BadRequest)]
    [InlineData("2027-03-01", HttpStatusCode.NotFound)]
    public async Task Sign_IsForTheDaysAround(string day, HttpStatusCode status)
    {
        var given = await GivenChecklist.OpenAsync(service);

        await given.Lead.RefusedAsync(
            HttpMethod.Post, $"/api/tasks/{given.Task}/checklists/{day}/signatures", await given.FormAsync(), status);
    }

    [Fact]
    public async Task ClosedAndUnknownDays_CannotBeReleased_AndSayWhy()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var closed = $"/api/tasks/{given.Task}/checklists/2025-10-15";
        var unknown = $"/api/tasks/{given.Task}/checklists/2026-02-02";

        var (one, other) = (await given.Lead.ReadAsync(closed), await given.Lead.ReadAsync(unknown));

        (one.Text("state"), one.GetProperty("release").Text("state")).ShouldBe(("closed", "not-workable"));
        one.GetProperty("release").Text("statement").ShouldStartWith("Cannot be released. Closed on Wed 15 Oct.");
        (other.Text("state"), other.GetProperty("release").Text("state")).ShouldBe(("unknown", "not-workable"));
        other.GetProperty("release").Text("statement").ShouldContain("do not start. Not known:");
    }

    [Fact]
    public async Task Content_HasTheHashThatTheVersionIs()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.SignAsync();

        await using var db = service.Database.Open(given.Office.Organization);
        var row = await db.ChecklistSignatures.SingleAsync();

        // The database writes JSON in its own way: the fields are put back in the order of the form.
        Convert.ToHexStringLower(SHA256.HashData(Canonical(row.Content))).ShouldBe(row.Version);
    }

    private static byte[] Canonical(string content)
    {
        var list = JsonSerializer.Deserialize<JsonElement>(content);
        string[] order = ["id", "text", "parts", "kind", "source", "authority", "fromMemory"];
        return JsonSerializer.SerializeToUtf8Bytes(new
        {
            form = list.Text("form"),
            practice = list.Text("practice"),
            items = list.GetProperty("items").EnumerateArray()
                .Select(item => order.ToDictionary(field => field, field => item.GetProperty(field))),
        });
    }
}
