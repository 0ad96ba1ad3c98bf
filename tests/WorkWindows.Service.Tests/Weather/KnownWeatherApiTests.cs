using System.Net;
using System.Text.Json;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

public sealed class KnownWeatherApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Address = $"/api/weather/stations/{GivenStation.StateCollege}";
    private const string NewYearsDay = "from=2000-01-01&to=2000-01-01";

    private static string Changed => GivenStation.StateCollegeFile.Replace(
        "USC00368449200001TMAX   67", "USC00368449200001TMAX   78", StringComparison.Ordinal);

    [Fact]
    public async Task Readings_AreShownAsTheyWereKnown_WithTheTimeTheyCame()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        await GivenStation.StateCollegeAsync(client);
        service.Clock.AdvanceHours(2);
        await client.ImportAsync($"{Address}/readings", Changed);

        (await MaximumAsync("")).ShouldBe((7.8, "2025-03-01T14:00:00Z"));
        (await MaximumAsync("&asOf=2025-03-01T13:59:59Z")).ShouldBe((6.7, "2025-03-01T12:00:00Z"));
        (await MaximumAsync("&asOf=2025-03-01T08:00:00-05:00")).ShouldBe((6.7, "2025-03-01T12:00:00Z"));
        (await client.ReadAsync($"{Address}/readings?{NewYearsDay}&asOf=2025-03-01T11:00:00Z"))
            .GetProperty("readings").GetArrayLength().ShouldBe(0);

        async Task<(double, string)> MaximumAsync(string asOf)
        {
            var shown = await client.ReadAsync($"{Address}/readings?{NewYearsDay}{asOf}");
            var reading = shown.GetProperty("readings").EnumerateArray()
                .Single(one => one.Text("element") == "max-temperature-c");
            return (reading.GetProperty("value").GetDouble(), reading.Text("knownSince"));
        }
    }

    [Fact]
    public async Task Readings_AreThoseOfTheLastYear_AndShowWhyTheSourceRejectsOne()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        await GivenStation.StateCollegeAsync(client);

        var last = await client.ReadAsync($"{Address}/readings");
        var rejected = (await AllAsync(client)).Where(one => one.Text("qualityFlag") != "");

        (last.Text("from"), last.Text("to")).ShouldBe(("2008-12-31", "2009-12-31"));
        // Flag I, internal consistency: all that the file has.
        rejected.Select(one => $"{one.Text("date")} {one.Text("element")} {one.Text("qualityFlag")}").ShouldBe(
            ["2005-01-31 snow-depth-cm I", "2005-02-01 snow-depth-cm I", "2006-02-18 max-temperature-c I"]);
    }

    [Theory]
    [InlineData("readings?asOf=yesterday", "asOf", "2026-02-01T04:00:00Z")]
    [InlineData("readings?asOf=2025-03-01T12:00:00", "asOf", "2026-02-01T04:00:00Z")]
    [InlineData("forecast?asOf=2125-03-01T12:00:00Z", "asOf", "not in the future")]
    [InlineData("alerts?asOf=2025-03-01", "asOf", "2026-02-01T04:00:00Z")]
    [InlineData("readings?from=2000-01-01&to=2009-12-31", "to", "at most 400 days")]
    [InlineData("readings?to=soon", "to", "a date such as 2025-01-31")]
    public async Task Known_NamesTheFieldAndWhatItAccepts(string question, string field, string accepted)
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672);

        var problem = await client.RefusedAsync(
            HttpMethod.Get, $"{Address}/{question}", null, HttpStatusCode.BadRequest);

        problem.Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task ForecastAndAlerts_AreShownAsTheyWereKnown()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var station = await GivenStation.StoreAsync(
            service.Database, organization, GivenStation.StateCollege, 40.7933, -77.8672);
        var early = Instant.FromUtc(2025, 2, 28, 10, 0);
        var late = Instant.FromUtc(2025, 2, 28, 20, 0);
        await using (var db = service.Database.Open(organization))
        {
            db.AddRange(
                Forecast(station, early, 3), Forecast(station, late, 9), Report(station, early, "Wind Advisory"),
                Report(station, late, "High Wind Warning"));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }
        var client = await service.MachineAsync(organization);

        // Issued at ten and at eight, each fetched twenty minutes later.
        (await ShownAsync("2025-02-28T10:19:00Z")).ShouldBe("");
        (await ShownAsync("2025-02-28T20:19:00Z")).ShouldBe("3 Wind Advisory");
        (await ShownAsync("2025-02-28T20:20:00Z")).ShouldBe("9 High Wind Warning");

        async Task<string> ShownAsync(string asOf)
        {
            var values = (await client.ReadAsync($"{Address}/forecast?asOf={asOf}")).GetProperty("values");
            var alerts = (await client.ReadAsync($"{Address}/alerts?asOf={asOf}")).GetProperty("alerts");
            return string.Join(' ', values.EnumerateArray().Select(value => value.Text("value"))
                .Concat(alerts.EnumerateArray().Select(alert => alert.Text("event"))));
        }
    }

    [Fact]
    public async Task Known_IsNotFound_ForAStationOfAnotherOrganization()
    {
        var theirs = await service.MachineAsync(await service.Database.AddOrganizationAsync("Theirs"));
        await GivenStation.PutAsync(theirs, GivenStation.StateCollege, 40.7933, -77.8672);
        var ours = await service.MachineAsync(await service.Database.AddOrganizationAsync("Ours"));

        foreach (var what in new[] { "readings", "forecast", "alerts" })
            await ours.RefusedAsync(HttpMethod.Get, $"{Address}/{what}", null, HttpStatusCode.NotFound);
    }

    private static async Task<List<JsonElement>> AllAsync(HttpClient client)
    {
        var all = new List<JsonElement>();
        for (var year = 2000; year <= 2009; year++)
        {
            var shown = await client.ReadAsync($"{Address}/readings?from={year}-01-01&to={year}-12-31");
            all.AddRange(shown.GetProperty("readings").EnumerateArray());
        }
        return all;
    }

    private static Service.Weather.Forecast Forecast(Guid station, Instant issued, double windMps)
    {
        var forecast = new Service.Weather.Forecast
        {
            StationId = station,
            IssuedAt = issued,
            FetchedAt = issued + Duration.FromMinutes(20),
        };
        forecast.Readings.Add(new() { Element = DailyElement.WindMps, Date = new(2025, 3, 2), Value = windMps });
        return forecast;
    }

    private static WeatherAlertReport Report(Guid station, Instant fetched, string named)
    {
        var report = new WeatherAlertReport { StationId = station, FetchedAt = fetched + Duration.FromMinutes(20) };
        report.Alerts.Add(new()
        {
            Kind = AlertKind.Wind,
            Event = named,
            StartsAt = Instant.FromUtc(2025, 3, 2, 10, 0),
            EndsAt = Instant.FromUtc(2025, 3, 2, 22, 0),
        });
        return report;
    }
}
