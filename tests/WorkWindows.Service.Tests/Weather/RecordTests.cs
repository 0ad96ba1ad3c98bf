using System.Net;
using System.Text;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

public sealed class RecordTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Neighbour = "USC00360002";

    [Fact]
    public async Task Record_IsBlended_AndTellsWhereEachValueComesFrom()
    {
        var client = await ConsultantAsync();
        var parcel = await BetweenTwoStationsAsync(client);

        var record = await client.ReadAsync($"/api/parcels/{parcel}/record?from=2005-01-15&to=2005-02-10");

        var stations = record.GetProperty("stations").EnumerateArray().ToList();
        stations.Select(station => station.Text("ghcnId")).ShouldBe([GivenStation.StateCollege, Neighbour]);
        var shares = stations.Select(station => station.GetProperty("temperatureShare").GetDouble()).ToList();
        shares.Sum().ShouldBe(1, 0.002);
        shares.ShouldAllBe(share => share > 0.3);
        var blended = Value(record, "2005-01-15", "min-temperature-c");
        (blended.Text("basis"), blended.Text("isFilled")).ShouldBe(("interpolated", "False"));
        Weights(blended).ShouldBe(stations.Zip(shares, (station, share) => (station.Text("ghcnId"), share)), true);
        // The station of the parcel has no February of that year: the other, always 2 °C warmer, stands in for it.
        var filled = Value(record, "2005-02-10", "min-temperature-c");
        (filled.Text("basis"), filled.Text("isFilled")).ShouldBe(("interpolated", "True"));
        Weights(filled).ShouldBe([(Neighbour, 1)]);
        record.GetProperty("errors").EnumerateArray()
            .ShouldAllBe(error => error.GetProperty("filledMaeC").GetDouble() < 0.1
                && error.GetProperty("blendedMaeC").GetDouble() > 1.9);
    }

    [Fact]
    public async Task Record_IsTheStationsOwn_WhenItWasChosenByHand()
    {
        var client = await ConsultantAsync();
        var parcel = await BetweenTwoStationsAsync(client);
        await client.PutAsync($"/api/parcels/{parcel}/station", new { temperature = GivenStation.StateCollege });

        var record = await client.ReadAsync($"/api/parcels/{parcel}/record?from=2005-01-15&to=2005-02-10");

        record.GetProperty("stations").GetArrayLength().ShouldBe(1);
        var own = Value(record, "2005-01-15", "min-temperature-c");
        (own.Text("basis"), own.Text("isFilled")).ShouldBe(("observed", "False"));
        record.GetProperty("days").EnumerateArray().ShouldNotContain(day => day.Text("date") == "2005-02-10");
    }

    [Fact]
    public async Task Verdicts_SayThatAValueWasWorkedOut()
    {
        var client = await ConsultantAsync();
        var parcel = await BetweenTwoStationsAsync(client);
        var task = await Land.TaskAsync(client, parcel, "hinge-cut");

        var bases = (await client.ReadAsync($"/api/tasks/{task.Id()}/days/2005-01-24")).GetProperty("rules")
            .EnumerateArray().SelectMany(rule => rule.GetProperty("findings").EnumerateArray())
            .Where(finding => finding.Text("signal") == "min-temperature-c").Select(finding => finding.Text("basis"));

        bases.Distinct().ShouldBe(["interpolated"]);
    }

    [Fact]
    public async Task Record_IsEmpty_WithoutAStation_AndNotFoundOfAnotherOrganization()
    {
        var client = await ConsultantAsync();
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");

        var record = await client.ReadAsync($"/api/parcels/{parcel}/record");

        record.GetProperty("stations").GetArrayLength().ShouldBe(0);
        record.GetProperty("days").GetArrayLength().ShouldBe(0);
        await (await ConsultantAsync()).RefusedAsync(
            HttpMethod.Get, $"/api/parcels/{parcel}/record", null!, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Rejected_ListsTheReadingThatItsSourceFlags()
    {
        var client = await ConsultantAsync();
        await GivenStation.StateCollegeAsync(client);
        var address = $"/api/weather/stations/{GivenStation.StateCollege}/rejected";

        var all = await client.ReadAsync(address);
        var later = await client.ReadAsync($"{address}?from=2009-12-31");

        var flagged = all.GetProperty("rejected").EnumerateArray()
            .Single(reading => reading.Text("reason") == "source-flag" && reading.Text("element") == "max-temperature-c");
        flagged.Text("because").ShouldBe("its source flags it");
        all.GetProperty("notUsed").GetInt32().ShouldBe(all.GetProperty("rejected").GetArrayLength());
        later.GetProperty("rejected").GetArrayLength().ShouldBe(0);
        later.GetProperty("notUsed").GetInt32().ShouldBe(all.GetProperty("notUsed").GetInt32());
        var problem = await client.RefusedAsync(
            HttpMethod.Get, $"{address}?from=2009-02-01&to=2009-01-31", null!, HttpStatusCode.BadRequest);
        problem.Error("to").ShouldContain("not before 2009-02-01");
        await client.RefusedAsync(
            HttpMethod.Get, "/api/weather/stations/USC00369999/rejected", null!, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Rejected_TellsThatAStationBecameWarmer_AndKeepsItsReadings()
    {
        var client = await ConsultantAsync();
        var parcel = await WithMovedStationAsync(client);
        var address = $"/api/weather/stations/{GivenStation.StateCollege}/rejected";

        var moved = await client.ReadAsync(address);
        var others = await client.ReadAsync($"/api/weather/stations/{Neighbour}/rejected");
        var page = WebUtility.HtmlDecode(await client.GetStringAsync($"/parcels/{parcel}/weather"));

        var steps = moved.GetProperty("steps").EnumerateArray().ToList();
        steps.Select(step => (step.Text("element"), step.Text("from"), step.GetProperty("sizeC").GetDouble()))
            .ShouldBe([("min-temperature-c", "2005-01-01", 3), ("max-temperature-c", "2005-01-01", 3)]);
        steps[0].Text("found").ShouldBe(
            "from about January 2005 on its minimum temperature is 5.4 °F (3.0 °C) warmer than before, against the "
            + "stations around");
        steps[0].Text("meaning").ShouldContain("all of its readings stay in use");
        others.GetProperty("steps").GetArrayLength().ShouldBe(0);
        moved.GetProperty("notUsed").GetInt32().ShouldBe(others.GetProperty("notUsed").GetInt32());
        page.ShouldContain("Stations that changed");
        page.ShouldContain($"{GivenStation.StateCollege}: {steps[1].Text("found")}.");
    }

    [Theory]
    [InlineData(StationPurpose.Temperature, null, "Temperatures")]
    [InlineData(StationPurpose.Temperature, 0.574, "Temperatures, 57 %")]
    [InlineData(StationPurpose.Temperature, 0d, "Temperatures, on days that lack others")]
    [InlineData(StationPurpose.Wind, null, "Wind")]
    public void StationLine_SaysWhatIsTakenFromTheStation(StationPurpose purpose, double? share, string use) =>
        new StationLine(purpose, "Larkspur", "USC00200001", 900, null, null, new(null, null), true, share).Use.ShouldBe(
            use);

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

    private static JsonElement Value(JsonElement record, string date, string element) =>
        record.GetProperty("days").EnumerateArray().Single(day => day.Text("date") == date)
            .GetProperty("values").EnumerateArray().Single(value => value.Text("element") == element);

    private static IEnumerable<(string Station, double Weight)> Weights(JsonElement value) =>
        value.GetProperty("weights").EnumerateArray()
            .Select(weight => (weight.Text("ghcnId"), weight.GetProperty("weight").GetDouble()));

    /// <summary>State College without February 2005, and a station with all of its record, 2 °C warmer.</summary>
    private static async Task<Guid> BetweenTwoStationsAsync(HttpClient client)
    {
        var lines = GivenStation.StateCollegeFile.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672, 356.6);
        await GivenStation.ReadingsAsync(
            client, GivenStation.StateCollege, File([.. lines.Where(line => line[11..17] != "200502")]));
        await GivenStation.PutAsync(client, Neighbour, 40.80, -78.02, 356.6);
        await GivenStation.ReadingsAsync(
            client, Neighbour, File([.. lines.Select(line => Warmer(line, Neighbour, 20))]));
        var (_, parcel) = await Land.CreateAsync(client, -77.94, 40.80, "42027", "PA");
        return parcel;
    }

    /// <summary>State College 3 °C warmer from 2005 on, between two stations with its record as it is.</summary>
    private static async Task<Guid> WithMovedStationAsync(HttpClient client)
    {
        var lines = GivenStation.StateCollegeFile.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var stations = new[] { (GivenStation.StateCollege, -77.8672), (Neighbour, -78.02), ("USC00360003", -77.7) };
        foreach (var (id, longitude) in stations)
        {
            await GivenStation.PutAsync(client, id, 40.7933, longitude, 356.6);
            var isMoved = id == GivenStation.StateCollege;
            await GivenStation.ReadingsAsync(client, id, File(
                [.. lines.Select(line => Warmer(line, id, isMoved && int.Parse(line[11..15]) >= 2005 ? 30 : 0))]));
        }
        return (await Land.CreateAsync(client, -77.87, 40.79, "42027", "PA")).Parcel;
    }

    private static byte[] File(string[] lines) => Encoding.ASCII.GetBytes(string.Join('\n', lines) + '\n');

    private static string Warmer(string line, string id, int byTenthsC)
    {
        line = id + line[11..];
        if (line[17..21] is not ("TMAX" or "TMIN"))
            return line;
        const int Month = 21, Day = 8, Value = 5;
        var days = Enumerable.Range(0, (line.Length - Month) / Day).Select(
            day => line.Substring(Month + day * Day, Day));
        return line[..Month] + string.Concat(days.Select(day => int.Parse(day[..Value]) is var tenths && tenths != -9999
            ? $"{tenths + byTenthsC,Value}{day[Value..]}"
            : day));
    }
}
