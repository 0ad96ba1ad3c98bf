using System.Net;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Weather;

public sealed class StationTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Readings_AreStoredOnce_AndCountedAgainWhenTheyChange()
    {
        var client = await ConsultantAsync();
        var address = $"/api/weather/stations/{GivenStation.StateCollege}/readings";
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672);

        var first = await client.ImportAsync(address, GivenStation.StateCollegeFile);
        var again = await client.ImportAsync(address, GivenStation.StateCollegeFile);
        // The first reading of the file: 6.7 °C on 1 January 2000.
        var changed = await client.ImportAsync(address, GivenStation.StateCollegeFile.Replace(
            "USC00368449200001TMAX   67", "USC00368449200001TMAX   78", StringComparison.Ordinal));

        var created = first.GetProperty("created").GetInt32();
        // Counted in the file: TMAX, TMIN, PRCP and SNWD that are neither missing nor presumed.
        created.ShouldBe(12_476);
        Counts(first).ShouldBe((created, 0, 0));
        Counts(again).ShouldBe((0, 0, created));
        Counts(changed).ShouldBe((0, 1, created - 1));
    }

    [Fact]
    public async Task List_ShowsHowCompleteARecordIs()
    {
        var client = await ConsultantAsync();
        await GivenStation.StateCollegeAsync(client);

        var station = (await client.ReadAsync("/api/weather/stations"))[0];

        (station.Text("firstDay"), station.Text("lastDay")).ShouldBe(("2000-01-01", "2009-12-31"));
        // One month of 120 is absent.
        station.GetProperty("temperatureCoverage").GetDouble().ShouldBeInRange(0.95, 119 / 120.0);
        station.GetProperty("windCoverage").GetDouble().ShouldBe(0);
    }

    [Theory]
    [InlineData("USC00368449,20040101,TMAX,850,,,0,\n", "1  TMAX 850")] // 85 °F in tenths
    [InlineData("USC00368449,20040101,TMAX,85,,,0,\nUSC00368449,20040101,TMAX,86,,,0,\n", "2  TMAX 2004-01-01")]
    [InlineData("USC00368449,20030229,TMAX,85,,,0,\n", "1  date 20030229")]
    [InlineData("USW00014922,20040101,TMAX,85,,,0,\n", "1  station USW00014922")]
    [InlineData("USC00368449,20040101,TM", "1  line USC00368449,20040101,TM")]
    [InlineData("USC00368449,20250301,TMAX,85,,,0,\nUSC00368449,21990101,TMAX,85,,,0,\n", "2  date 2199-01-01")]
    [InlineData("USC00368449,20250302,TMAX,85,,,0,\n", "1  date 2025-03-02")] // it is 1 March there
    [InlineData("", "  file empty")]
    public async Task Readings_AreRefusedWhole_AndTheFaultIsNamed(string file, string fault)
    {
        var client = await ConsultantAsync();
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672);

        var problem = await client.ImportAsync(
            $"/api/weather/stations/{GivenStation.StateCollege}/readings", file, HttpStatusCode.UnprocessableEntity);

        problem.Faults().ShouldBe([fault], problem.ToString());
    }

    [Fact]
    public async Task Readings_MayBeMissing_OfDaysToCome()
    {
        var client = await ConsultantAsync();
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672);

        var stored = await client.ImportAsync(
            $"/api/weather/stations/{GivenStation.StateCollege}/readings",
            "USC00368449,20250301,TMAX,85,,,0,\nUSC00368449,20250302,TMAX,-9999,,,0,\n");

        Counts(stored).ShouldBe((1, 0, 0));
    }

    [Fact]
    public async Task Readings_OfATable_NeedItsUnits()
    {
        var client = await ConsultantAsync();
        await GivenStation.PutAsync(client, "USC00200230", 42.2947, -83.7108);
        const string address = "/api/weather/stations/USC00200230/readings";
        const string table = "\"STATION\",\"DATE\",\"TMAX\"\n\"USC00200230\",\"1891-10-01\",\"69\"\n";

        var refused = await client.ImportAsync(address, table, HttpStatusCode.UnprocessableEntity);
        var unknown = await client.ImportAsync($"{address}?units=imperial", table, HttpStatusCode.UnprocessableEntity);
        var stored = await client.ImportAsync($"{address}?units=standard", table);

        refused.Faults().ShouldBe(["1  units not said"], refused.ToString());
        unknown.Faults().ShouldBe(["  units imperial"], unknown.ToString());
        Counts(stored).ShouldBe((1, 0, 0));
    }

    [Fact]
    public async Task Put_NamesEveryFaultAtOnce()
    {
        var problem = await (await ConsultantAsync()).RefusedAsync(
            HttpMethod.Post, "/api/weather/stations/KMSP", new { latitude = 91, longitude = 200, elevationM = 30_000 },
            HttpStatusCode.BadRequest);

        problem.GetProperty("errors").EnumerateObject().Select(field => field.Name)
            .ShouldBe(["elevationM", "ghcnId", "latitude", "longitude", "name"]);
    }

    [Fact]
    public async Task Readings_AreNotFound_ForAStationOfAnotherOrganization()
    {
        await GivenStation.PutAsync(await ConsultantAsync(), GivenStation.StateCollege, 40.7933, -77.8672);

        await (await ConsultantAsync()).ImportAsync(
            $"/api/weather/stations/{GivenStation.StateCollege}/readings", "", HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Crews_SeeStations_AndDoNotWriteThem()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var crew = await service.MachineAsync(organization, Role.CrewMember);

        (await crew.ReadAsync("/api/weather/stations")).GetArrayLength().ShouldBe(0);
        await crew.RefusedAsync(
            HttpMethod.Post, "/api/weather/stations/USC00368449", new { name = "a" }, HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Parcel_TakesTheNearestUsableStation_WhicheverComesFirst()
    {
        var client = await ConsultantAsync();
        var (_, before) = await Land.CreateAsync(client, -77.94, 40.80, "42027", "PA");
        await GivenStation.StateCollegeAsync(client);
        // Nearer, but without a record.
        await GivenStation.PutAsync(client, "USC00360001", 40.80, -77.94);
        var (_, after) = await Land.CreateAsync(client, -77.82, 40.83, "42027", "PA");

        foreach (var (parcel, distanceM) in new[] { (before, 6_010.0), (after, 6_000.0) })
        {
            var link = (await client.ReadAsync($"/api/parcels/{parcel}/station")).EnumerateArray().Single();
            (link.Text("purpose"), link.Text("ghcnId")).ShouldBe(("temperature", GivenStation.StateCollege));
            // Reckoned from the degrees at this latitude: 111.1 km a degree north, 84.3 km a degree east.
            link.GetProperty("distanceM").GetDouble().ShouldBe(distanceM, tolerance: 50);
            link.Text("elevationDifferenceM").ShouldBe("");
        }
    }

    [Fact]
    public async Task Parcel_KeepsAStationChosenByHand_UntilTheChoiceIsTakenBack()
    {
        var client = await ConsultantAsync();
        await GivenStation.StateCollegeAsync(client);
        await GivenStation.PutAsync(client, "USC00360001", 40.80, -77.94, 500);
        var (_, parcel) = await Land.CreateAsync(client, -77.94, 40.80, "42027", "PA");
        var address = $"/api/parcels/{parcel}/station";

        await client.PutAsync(address, new { temperature = "USC00360001" });
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.80, -77.93);
        var chosen = (await client.ReadAsync(address))[0];
        var back = (await client.PutAsync(address, new { temperature = (string?)null }))[0];

        (chosen.Text("ghcnId"), chosen.Text("isManual")).ShouldBe(("USC00360001", "True"));
        (back.Text("ghcnId"), back.Text("isManual")).ShouldBe((GivenStation.StateCollege, "False"));
        var problem = await client.RefusedAsync(
            HttpMethod.Put, address, new { wind = "USC00369999" }, HttpStatusCode.BadRequest);
        problem.Error("wind").ShouldContain("a station that exists");
    }

    [Fact]
    public async Task Parcel_HasNoStation_WhenAllAreFarAway()
    {
        var client = await ConsultantAsync();
        await GivenStation.StateCollegeAsync(client);
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");

        (await client.ReadAsync($"/api/parcels/{parcel}/station")).GetArrayLength().ShouldBe(0);
    }

    private static (int Created, int Updated, int Unchanged) Counts(JsonElement counts) => (
        counts.GetProperty("created").GetInt32(), counts.GetProperty("updated").GetInt32(),
        counts.GetProperty("unchanged").GetInt32());

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
