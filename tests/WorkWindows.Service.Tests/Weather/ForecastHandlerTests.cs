using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Forecasts;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Tests;

namespace WorkWindows.Service.Tests.Weather;

public sealed class ForecastHandlerTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    [Fact]
    public async Task Fetch_KeepsEachForecastOnce_AndGoesOnWhenAStationHasNone()
    {
        var organization = await database.AddOrganizationAsync("Org");
        // The service has no forecast for the first one; nobody takes temperatures from the last one.
        await GivenStation.StoreAsync(database, organization, "USC00000001", 40, -60);
        var albany = await GivenStation.StoreAsync(database, organization, "USC00000002", 42.745, -73.752);
        await GivenStation.StoreAsync(database, organization, "USC00000003", 42.745, -73.752, StationPurpose.Wind);
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            var path = $"feeds/forecast{context.Request.Path}.json";
            if (context.Request.Path == "/points/40,-60")
                await ReplayServer.SendAsync(
                    context, 404, "application/problem+json", "{\"title\": \"No data\"}"u8.ToArray());
            else
                await ReplayServer.SendAsync(
                    context, 200, "application/geo+json", File.ReadAllBytes(ProjectFiles.Reference(path)));
        });

        await FetchAsync(organization, server);
        await FetchAsync(organization, server);

        await using var db = database.Open(organization);
        var kept = await db.Forecasts.Include(forecast => forecast.Readings).SingleAsync();
        (kept.StationId, kept.IssuedAt).ShouldBe((albany, Instant.FromUtc(2026, 4, 12, 10, 27, 58)));
        kept.Readings.Where(reading => reading.Element == DailyElement.GustMps).ShouldNotBeEmpty();
        kept.Readings.ShouldContain(reading =>
            reading.Element == DailyElement.MaxTemperatureC && reading.Date == new LocalDate(2026, 4, 13));
    }

    [Fact]
    public async Task FetchAsync_MakesTodayWorse_WhenTheRestOfTheDayIsGustierOrDrier()
    {
        var organization = await database.AddOrganizationAsync("Gusts");
        var albany = await GivenStation.StoreAsync(database, organization, "USC00000004", 42.745, -73.752);
        var today = new LocalDate(2026, 4, 12);
        await using (var db = database.Open(organization))
        {
            var earlier = new WorkWindows.Service.Weather.Forecast
            {
                StationId = albany,
                IssuedAt = Instant.FromUtc(2026, 4, 11, 10, 0),
                FetchedAt = Instant.FromUtc(2026, 4, 11, 10, 0),
            };
            earlier.Readings.Add(new() { Element = DailyElement.GustMps, Date = today, Value = 0.1 });
            earlier.Readings.Add(new() { Element = DailyElement.WindMps, Date = today, Value = 99 });
            earlier.Readings.Add(new() { Element = DailyElement.MinHumidityPercent, Date = today, Value = 55 });
            db.Add(earlier);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }
        // What is left of the day from 14:00 local time on, and the day after: 72 km/h are 20 m/s.
        var layer = """
            {"uom": "wmoUnit:km_h-1", "values": [
              {"validTime": "2026-04-12T18:00:00+00:00/PT10H", "value": 72},
              {"validTime": "2026-04-13T04:00:00+00:00/P1D", "value": 18}]}
            """;
        var humidity = layer.Replace("wmoUnit:km_h-1", "wmoUnit:percent").Replace("72", "40");
        var gridpoint = Encoding.UTF8.GetBytes($$$"""
            {"properties": {"updateTime": "2026-04-12T11:30:00+00:00", "windSpeed": {{{layer}}},
             "windGust": {{{layer}}}, "relativeHumidity": {{{humidity}}}}}
            """);
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 200, "application/geo+json",
            context.Request.Path.StartsWithSegments("/gridpoints")
                ? gridpoint
                : File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast{context.Request.Path}.json"))));

        await FetchAsync(organization, server);

        await using var kept = database.Open(organization);
        var newest = await kept.Forecasts.Include(forecast => forecast.Readings)
            .OrderByDescending(forecast => forecast.IssuedAt).FirstAsync(TestContext.Current.CancellationToken);
        var values = newest.Readings.Where(reading => reading.Date == today)
            .ToDictionary(reading => reading.Element, reading => reading.Value);
        values[DailyElement.GustMps].ShouldBe(20, 1e-9);
        values[DailyElement.MinHumidityPercent].ShouldBe(40);
        values[DailyElement.WindMps].ShouldBe(99, "the calmer rest of the day takes nothing back");
    }

    private async Task FetchAsync(Guid organization, ReplayServer server)
    {
        using var feeds = new TestFeeds(server.Address);
        await using var db = database.Open(organization);
        var states = new FeedStates(db, feeds.Clock);
        var feed = new NwsGridpointFeed(feeds.Http, new(feeds.Http, feeds.Options));
        await new ForecastHandler(
            db, new([feed], Options.Create(new ForecastOptions())),
            new(db, states, NullLogger<StationFetches>.Instance), states, NoJobs.Look(db, feeds.Clock), feeds.Clock,
            NullLogger<ForecastHandler>.Instance)
            .FetchAsync(TestContext.Current.CancellationToken);
    }
}
