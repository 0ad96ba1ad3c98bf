using System.Net;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

public sealed class WindowsApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Year2004 = "from=2004-01-01&to=2004-12-31";

    [Fact]
    public async Task Windows_LieInTheDormantSeasonAndLateSummer_OnRealTemperaturesAndWinds()
    {
        var (client, _, task) = await HingeCutAsync("red maple");

        var view = await client.ReadAsync($"/api/tasks/{task}/windows?{Year2004}");

        var season = view.GetProperty("season");
        var windows = season.GetProperty("windows").EnumerateArray().Select(window => window.Text("from")).ToList();
        windows.ShouldNotBeEmpty();
        var leafOut = season.GetProperty("leafOut")[0].Text("date");
        leafOut.ShouldBeInRange("2004-04-01", "2004-05-10");
        windows.ShouldAllBe(
            from => string.CompareOrdinal(from, "2004-01-25") >= 0 && string.CompareOrdinal(from, leafOut) < 0
            || string.CompareOrdinal(from, "2004-08-01") >= 0 && string.CompareOrdinal(from, "2004-10-01") < 0);
        season.GetProperty("days").EnumerateObject().Sum(count => count.Value.GetInt32()).ShouldBe(366);
        view.GetProperty("states").EnumerateArray().First().Text("from").ShouldBe("2004-01-01");
        // Today is not among these days.
        view.GetProperty("outlook").ValueKind.ShouldBe(JsonValueKind.Null);
    }

    [Fact]
    public async Task Windows_ShowTheComingYear_AndWhereTheTaskStandsToday()
    {
        var (client, _, task) = await HingeCutAsync("red maple");

        var view = await client.ReadAsync($"/api/tasks/{task}/windows");

        // The fixture's clock stands at 1 March 2025, long after the last reading.
        (view.Text("today"), view.Text("timeZone")).ShouldBe(("2025-03-01", "America/New_York"));
        view.GetProperty("season").Text("to").ShouldBe("2026-02-28");
        view.GetProperty("outlook").Text("state").ShouldBe("unknown");
    }

    [Fact]
    public async Task Day_NamesEveryRuleThatSpoke_WithValueThresholdMarginBasisAndSource()
    {
        var (client, _, task) = await HingeCutAsync("red maple");

        // The file has minima of -16.1, -17.8 and -17.8 °C on 24 to 26 January: 3, 0 and 0 °F.
        var day = await client.ReadAsync($"/api/tasks/{task}/days/2004-01-26");

        day.Text("state").ShouldBe("closed");
        var rule = Rule(day, "hinge.cold-run").ShouldNotBeNull();
        (rule.Text("truth"), rule.Text("effect"), rule.Text("decides")).ShouldBe(("holds", "closes", "True"));
        rule.Text("authority").ShouldBe("common-practice");
        rule.GetProperty("source").Text("title").ShouldBe("common practice, no source");
        var finding = rule.GetProperty("findings")[0];
        (finding.Text("basis"), finding.Text("unit"), finding.Text("threshold")).ShouldBe(("observed", "°F", "20"));
        finding.GetProperty("margin").GetDouble().ShouldBe(20 - finding.GetProperty("value").GetDouble(), 1e-9);
        finding.Text("sentence").ShouldContain("°F (observed); limit: below 20 °F for 3 days in a row");
    }

    [Fact]
    public async Task Observation_TakesPrecedence_OverThePrediction()
    {
        var (client, property, task) = await HingeCutAsync("red maple");
        var address = $"/api/properties/{property}/observations/leaf-out/2004";
        var before = await LeafOutAsync(client, task);

        await client.PutAsync(address, new { observedOn = "2004-05-06", note = "Buds open on the north slope." });

        before.Basis.ShouldBe("observed");
        string.CompareOrdinal(before.Date, "2004-05-06").ShouldBeLessThan(0);
        (await LeafOutAsync(client, task)).ShouldBe(("2004-05-06", "site-observation"));
        (await ClosedByLeafAsync(client, task, "2004-05-05")).ShouldBeFalse();
        (await ClosedByLeafAsync(client, task, "2004-05-06")).ShouldBeTrue();
        (await client.DeleteAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await LeafOutAsync(client, task)).ShouldBe(before);
        (await ClosedByLeafAsync(client, task, "2004-05-05")).ShouldBeTrue();
    }

    [Fact]
    public async Task Observation_OfAnotherYear_DrawsThePredictionToIt()
    {
        var (client, property, task) = await HingeCutAsync("red maple");
        var before = await LeafOutAsync(client, task);

        await client.PutAsync(
            $"/api/properties/{property}/observations/leaf-out/2003", new { observedOn = "2003-05-15" });

        var after = await LeafOutAsync(client, task);
        after.Basis.ShouldBe("observed");
        string.CompareOrdinal(after.Date, before.Date).ShouldBeGreaterThan(0);
        var season = (await client.ReadAsync($"/api/tasks/{task}/windows?{Year2004}")).GetProperty("season");
        var leafOut = season.GetProperty("leafOut")[0];
        string.CompareOrdinal(leafOut.Text("earliest"), after.Date).ShouldBeLessThan(0);
        string.CompareOrdinal(leafOut.Text("latest"), after.Date).ShouldBeGreaterThan(0);
    }

    [Fact]
    public async Task Observation_IsRefused_OutsideItsYearOrToCome()
    {
        var (client, property, _) = await HingeCutAsync("red maple");
        var address = $"/api/properties/{property}/observations/leaf-out";

        (await client.RefusedAsync(
            HttpMethod.Put, $"{address}/2004", new { observedOn = "2005-05-06" }, HttpStatusCode.BadRequest))
            .Error("observedOn").ShouldContain("a day of 2004");
        (await client.RefusedAsync(
            HttpMethod.Put, $"{address}/2026", new { observedOn = "2026-05-06" }, HttpStatusCode.BadRequest))
            .Error("year").ShouldContain("to 2025");
    }

    [Fact]
    public async Task TimeZone_ChangesTheDaylightOfAShift_AndTheDayItIs()
    {
        var client = await ConsultantAsync();
        var (property, parcel) = await Land.CreateAsync(client, -86.4, 42.6, "26005", "MI");
        var task = (await Land.TaskAsync(client, parcel, "cleanup")).Id();
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 5, 30));
        var (before, dark) = (
            await client.ReadAsync($"/api/tasks/{task}/windows"),
            await client.ReadAsync($"/api/tasks/{task}/days/2024-10-25"));

        await client.PutAsync($"/api/properties/{property}", new
        {
            name = "West",
            countyFips = "26005",
            state = "MI",
            timeZone = "America/Chicago",
        });

        // By the lake the sun rises after eight in October by Eastern time, which is after seven by Central time.
        Rule(dark, "daylight.dark-hours").ShouldNotBeNull();
        Rule(await client.ReadAsync($"/api/tasks/{task}/days/2024-10-25"), "daylight.dark-hours").ShouldBeNull();
        before.Text("today").ShouldBe("2025-03-01");
        (await client.ReadAsync($"/api/tasks/{task}/windows")).Text("today").ShouldBe("2025-02-28");
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
    }

    [Fact]
    public async Task Windows_AreUnknownInSpring_WhenTenYearsOfTheRecordAreMissing()
    {
        var client = await ConsultantAsync();
        await GivenStation.MinneapolisAsync(client, year => year is >= 1978 and < 1990 or > 1999 and <= 2009);
        var (_, parcel) = await Land.CreateAsync(client, -93.4, 44.6, "27037", "MN");
        var task = (await Land.TaskAsync(client, parcel, "hinge-cut")).Id();

        var missing = (await client.ReadAsync($"/api/tasks/{task}/windows?from=1995-01-01&to=1995-12-31")).GetProperty(
            "season");
        var known = (await client.ReadAsync($"/api/tasks/{task}/windows?from=2005-01-01&to=2005-12-31")).GetProperty(
            "season");

        missing.GetProperty("leafOut").GetArrayLength().ShouldBe(0);
        missing.GetProperty("windows").GetArrayLength().ShouldBe(0);
        missing.GetProperty("days").GetProperty("unknown").GetInt32().ShouldBeGreaterThan(100);
        Rule(await client.ReadAsync($"/api/tasks/{task}/days/1995-05-01"), "season.full-leaf")?.Text("truth")
            .ShouldBe("unknown");
        known.GetProperty("leafOut").GetArrayLength().ShouldBe(1);
        known.GetProperty("windows").GetArrayLength().ShouldBeGreaterThan(0);
    }

    [Theory]
    [InlineData("windows?from=2004-01-01&to=2005-02-04", "to", "at most 400 days")]
    [InlineData("windows?from=2004-02-01&to=2004-01-31", "to", "not before 2004-02-01")]
    [InlineData("windows?from=2003-02-29", "from", "a date such as 2025-01-31")]
    [InlineData("windows?from=tomorrow", "from", "a date such as 2025-01-31")]
    [InlineData("days/9999-12-31", "date", "a date such as 2025-01-31")]
    public async Task Windows_NameWhatIsWrongWithTheDays(string address, string field, string accepted)
    {
        var client = await ConsultantAsync();
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var task = (await Land.TaskAsync(client, parcel, "cleanup")).Id();

        var problem = await client.RefusedAsync(
            HttpMethod.Get, $"/api/tasks/{task}/{address}", null, HttpStatusCode.BadRequest);

        problem.Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task Week_HasTenDaysOfEveryTaskThatIsStillToBeDone()
    {
        var (client, _, task) = await HingeCutAsync("red maple");
        var parcel = (await client.ReadAsync($"/api/tasks/{task}")).GetProperty("parcelId").GetGuid();
        var tieDown = (await Land.TaskAsync(client, parcel, "tie-down")).Id();
        var done = (await Land.TaskAsync(client, parcel, "tie-down")).Id();
        await client.PutAsync($"/api/tasks/{done}/completion", new { completedOn = "2025-02-01" });

        var week = await client.ReadAsync("/api/week?from=2004-07-25");

        (week.Text("from"), week.Text("to")).ShouldBe(("2004-07-25", "2004-08-03"));
        var states = week.GetProperty("tasks").EnumerateArray().ToDictionary(
            row => row.GetProperty("taskId").GetGuid(),
            row => string.Join(' ', row.GetProperty("states").EnumerateArray()));
        states.Count.ShouldBe(2);
        // Two days of 80 °F whose humidity nobody knows are limited; a gust of 15.6 m/s closes the ninth.
        states[tieDown].ShouldBe("open open open open open open limited open closed limited");
        states[task].ShouldStartWith("closed closed closed closed closed closed closed ");
    }

    [Fact]
    public async Task Replay_GivesTheSameHash()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        var (_, _, task) = await HingeCutAsync("red maple", client);
        await GivenHingeCut.DecideAsync(service, organization);

        var decisions = await client.ReadAsync($"/api/tasks/{task}/decisions");
        var replay = await client.ReadAsync($"/api/decisions/{decisions[0].Id()}/replay");

        decisions[0].Text("firstDay").ShouldBe("2004-01-01");
        replay.Text("isSame").ShouldBe("True");
        replay.Text("replayedHash").ShouldBe(decisions[0].Text("hash"));
        await (await ConsultantAsync()).RefusedAsync(
            HttpMethod.Get, $"/api/decisions/{decisions[0].Id()}/replay", null, HttpStatusCode.NotFound);
        var problem = await client.RefusedAsync(
            HttpMethod.Delete, $"/api/tasks/{task}", null, HttpStatusCode.Conflict);
        problem.Text("detail").ShouldContain("kept for ever");
    }

    [Fact]
    public async Task OtherOrganizations_AreNotFound()
    {
        var (_, _, task) = await HingeCutAsync("red maple");
        var other = await ConsultantAsync();

        foreach (var part in new[] { "windows", "days/2004-03-01", "decisions" })
            await other.RefusedAsync(HttpMethod.Get, $"/api/tasks/{task}/{part}", null, HttpStatusCode.NotFound);
    }

    private async Task<(HttpClient Client, Guid Property, Guid Task)> HingeCutAsync(
        string species, HttpClient? client = null)
    {
        client ??= await ConsultantAsync();
        var (property, task) = await GivenHingeCut.CreateAsync(client, species);
        return (client, property, task);
    }

    private static JsonElement? Rule(JsonElement day, string id) => day.GetProperty("rules").EnumerateArray()
        .Where(rule => rule.Text("id") == id).Cast<JsonElement?>().SingleOrDefault();

    private static async Task<bool> ClosedByLeafAsync(HttpClient client, Guid task, string date) =>
        Rule(await client.ReadAsync($"/api/tasks/{task}/days/{date}"), "season.full-leaf") is not null;

    private static async Task<(string Date, string Basis)> LeafOutAsync(HttpClient client, Guid task)
    {
        var view = await client.ReadAsync($"/api/tasks/{task}/windows?{Year2004}");
        var leafOut = view.GetProperty("season").GetProperty("leafOut")[0];
        return (leafOut.Text("date"), leafOut.Text("basis"));
    }

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
