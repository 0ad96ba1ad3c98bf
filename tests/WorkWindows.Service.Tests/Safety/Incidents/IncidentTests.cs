using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Rules;

namespace WorkWindows.Service.Tests.Safety.Incidents;

/// <summary>The clock stands at 1 March 2025, noon UTC: seven in the morning on the property.</summary>
public sealed class IncidentTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Incident_KeepsWhatTheDayWasLike_AndTheDecisionThatStoodAtThatHour()
    {
        var given = await OpenAsync();
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));
        var decision = (await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/decisions"))[0].Text("hash");
        service.Clock.Advance(Duration.FromHours(3));

        var made = await given.Consultant.CreateAsync(Address(given), Form());

        (made.Text("kind"), made.Text("day"), made.Text("happenedAt")).ShouldBe(
            ("near-miss", "2025-03-01", "2025-03-01T13:30:00Z"));
        (made.Text("recordedBy"), made.Text("recordedAt")).ShouldBe((given.Name, "2025-03-01T15:00:00Z"));
        made.Text("decisionHash").ShouldBe(decision);
        var conditions = made.GetProperty("conditions");
        conditions.GetProperty("day").Text("state").ShouldBe(await given.StateAsync("2025-03-01"));
        conditions.GetProperty("day").GetProperty("rules").GetArrayLength().ShouldBeGreaterThan(0);
        var signals = conditions.GetProperty("signals").EnumerateArray().ToDictionary(one => one.Text("signal"));
        (signals["gust-mps"].GetProperty("value").GetDouble(), signals["gust-mps"].Text("basis")).ShouldBe(
            (4, "forecast"));
        signals["snow-depth-cm"].GetProperty("value").ValueKind.ShouldBe(
            JsonValueKind.Null, "what is not known is not zero");
        conditions.Text("forecastIssuedAt").ShouldBe("2025-03-01T12:00:00Z");
        conditions.Text("knownAt").ShouldBe("2025-03-01T13:30:00Z");
        conditions.Text("light").ShouldStartWith("Daylight: sunrise Sat 1 Mar 2025, 7:");
        conditions.Text("byTheHour").ShouldContain("not known by the hour");
        (await given.AuditAsync("?kind=incident")).ShouldBe([$"incident by {given.Name}: nothing -> row"]);
    }

    [Fact]
    public async Task Incident_ThatIsRecordedLate_KeepsWhatWasKnownAtItsHour()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        var stateThen = await given.StateAsync("2025-03-01");
        await using (var db = service.Database.Open(given.Organization))
        {
            var station = await db.Stations.Select(row => row.Id).FirstAsync(TestContext.Current.CancellationToken);
            var later = new Service.Weather.Forecast
            {
                StationId = station,
                IssuedAt = service.Clock.GetCurrentInstant(),
                FetchedAt = service.Clock.GetCurrentInstant(),
            };
            later.Readings.Add(new() { Element = DailyElement.GustMps, Date = new(2025, 3, 1), Value = 30 });
            db.Add(later);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var conditions = (await given.Consultant.CreateAsync(Address(given), Form())).GetProperty("conditions");

        (await given.StateAsync("2025-03-01")).ShouldBe("closed", "by the gusts that were foretold afterwards");
        conditions.GetProperty("day").Text("state").ShouldBe(stateThen);
        conditions.Text("forecastIssuedAt").ShouldBe("2025-03-01T12:00:00Z");
    }

    [Fact]
    public async Task Incident_KeepsNoDecision_ThatWasMadeAfterIt()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));

        (await given.Consultant.CreateAsync(Address(given), Form())).GetProperty("decisionHash").ValueKind
            .ShouldBe(JsonValueKind.Null);
    }

    [Fact]
    public async Task Correction_IsAFurtherEntry_AndTheFirstStays()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        var first = await given.Consultant.CreateAsync(Address(given), Form());

        var second = await given.Consultant.CreateAsync(
            Address(given), Form() with { Kind = "injury", CorrectsId = first.Id() });

        second.Text("correctsId").ShouldBe(first.Text("id"));
        (await given.Consultant.ReadAsync(Address(given))).EnumerateArray().Select(one => one.Text("kind")).Order()
            .ShouldBe(["injury", "near-miss"]);
        (await given.Consultant.RefusedAsync(
            HttpMethod.Post, Address(given), Form() with { CorrectsId = Guid.NewGuid() }, HttpStatusCode.BadRequest))
            .Error("correctsId").ShouldContain("an entry of the same task");
    }

    [Theory]
    [InlineData("accident", "2025-03-01T07:00:00-05:00", "A limb fell.", "Nobody", "kind", "injury, property-damage, near-miss")]
    [InlineData("injury", "2025-03-01T07:00:01-05:00", "A limb fell.", "Nobody", "happenedAt", "not in the future")]
    [InlineData("injury", "2024-02-28T07:00:00-05:00", "A limb fell.", "Nobody", "happenedAt", "at most 366 days ago")]
    [InlineData("injury", "1 March", "A limb fell.", "Nobody", "happenedAt", "a time as in")]
    [InlineData("injury", "2025-03-01T07:00:00-05:00", " ", "Nobody", "whatHappened", "1 to 4000 characters")]
    [InlineData("injury", "2025-03-01T07:00:00-05:00", "A limb fell.", null, "whoWasTold", "or nobody")]
    public async Task Record_NamesWhatIsNotAccepted(
        string kind, string at, string what, string? told, string field, string accepted)
    {
        var given = await OpenAsync();

        (await given.Consultant.RefusedAsync(
            HttpMethod.Post, Address(given), new Asked(kind, at, what, told, null), HttpStatusCode.BadRequest))
            .Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task Export_IsATable_WithEveryEntry_AndNothingThatASpreadsheetRuns()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        await given.Consultant.CreateAsync(
            Address(given), Form() with { WhatHappened = "=1+1, \"quoted\"\nand a line" });

        using var answer = await given.Consultant.GetAsync("/api/incidents/export");

        answer.Content.Headers.ContentType!.ToString().ShouldBe("text/csv; charset=utf-8");
        var text = await answer.Content.ReadAsStringAsync();
        text.ShouldStartWith(
            "id,correctsId,kind,happenedAtUtc,day,timeZone,property,parcel,task,practice,state,rules,");
        text.ShouldContain(",near miss,2025-03-01T13:30:00Z,2025-03-01,America/Detroit,");
        text.ShouldContain("\"'=1+1, \"\"quoted\"\"\nand a line\",Tom Vance,");
    }

    [Fact]
    public async Task Incidents_AreRecordedByCrews_AndListedForConsultants_OfTheOrganization()
    {
        var (given, other) = (await OpenAsync(), await OpenAsync());
        service.Clock.Advance(Duration.FromHours(3));
        var crew = await service.MachineAsync(given.Organization, Role.CrewMember);
        var landowner = await service.MachineAsync(given.Organization, Role.Landowner);

        await crew.CreateAsync(Address(given), Form());

        (await given.Consultant.ReadAsync("/api/incidents")).GetArrayLength().ShouldBe(1);
        (await other.Consultant.ReadAsync("/api/incidents")).GetArrayLength().ShouldBe(0);
        await crew.RefusedAsync(HttpMethod.Get, "/api/incidents", null, HttpStatusCode.Forbidden);
        await crew.RefusedAsync(HttpMethod.Get, "/api/incidents/export", null, HttpStatusCode.Forbidden);
        await landowner.RefusedAsync(HttpMethod.Get, Address(given), null, HttpStatusCode.Forbidden);
        await other.Consultant.RefusedAsync(HttpMethod.Post, Address(given), Form(), HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Task_CannotBeDeleted_OnceAnIncidentIsRecorded()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        await given.Consultant.CreateAsync(Address(given), Form());

        (await given.Consultant.RefusedAsync(
            HttpMethod.Delete, $"/api/tasks/{given.Task}", null, HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("Watches, incidents and records of work");
    }

    [Fact]
    public async Task Pages_RecordListAndCorrect()
    {
        var given = await OpenAsync();
        service.Clock.Advance(Duration.FromHours(3));
        var page = $"/tasks/{given.Task}/incidents";

        using var recorded = await given.Consultant.PostFormAsync(page, new()
        {
            ["Entry.Kind"] = "property-damage",
            ["Entry.HappenedAt"] = "2025-03-01T08:30",
            ["Entry.WhatHappened"] = "A stem fell on the fence.",
            ["Entry.WhoWasTold"] = "The neighbour",
        });

        recorded.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await given.Consultant.GetStringAsync(page)).ShouldContain("Sat 1 Mar 2025, 8:30: property damage");
        (await given.Consultant.GetStringAsync("/incidents")).ShouldContain("A stem fell on the fence.");
        using var refused = await given.Consultant.PostFormAsync(page, new() { ["Entry.Kind"] = "injury" });
        (await refused.Content.ReadAsStringAsync()).ShouldContain("Nothing was stored.");
    }

    private async Task<Consultancy> OpenAsync()
    {
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        return await Consultancy.OpenAsync(service);
    }

    private static string Address(Consultancy given) => $"/api/tasks/{given.Task}/incidents";

    private static Asked Form() =>
        new("near-miss", "2025-03-01T08:30:00-05:00", "A limb fell beside the feller.", "Tom Vance", null);

    private sealed record Asked(
        string Kind, string HappenedAt, string WhatHappened, string? WhoWasTold, Guid? CorrectsId);
}
