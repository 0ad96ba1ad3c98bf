using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>Readings stop while forecasts keep coming.</summary>
public sealed class ObservationOutageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string NeedsASum =
        "degree-days: { method: simple-average, base: 50 degF, since: 01-01 }, at-least: 2000 degF-days";

    private static readonly LocalDate FirstOfMarch = new(2025, 3, 1);

    [Fact]
    public async Task Days_AreKnownByForecastsForTenDays_ThenUnknown_AndKnownAgainWithTheReadings()
    {
        var house = await Consultancy.OpenAsync(service);
        await house.PutPackAsync(
            "pack: house\nversion: \"1\"\ntitle: House rules\nlevel: organization\nrules:\n"
            + HousePack.Rule("house.sum", "closes", NeedsASum));
        await using var db = service.Database.Open(house.Organization);
        var station = db.Stations.Single();
        db.AddRange(Readings(station.Id, new(2025, 1, 1), new(2025, 2, 28)));
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        // A new forecast each noon; on the eleventh, the last that spoke of the first is ten days old.
        for (var day = 1; day <= 10; day++)
        {
            service.Clock.AdvanceHours(24);
            db.Add(Forecast(station.Id, FirstOfMarch.PlusDays(day)));
        }
        db.Add(new WeatherAlertReport
        {
            StationId = station.Id,
            FetchedAt = service.Clock.GetCurrentInstant() - Duration.FromHours(1),
        });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        service.Clock.AdvanceMinutes(-1);
        var before = await house.StateAsync("2025-03-12");
        service.Clock.AdvanceMinutes(1);
        var after = await house.StateAsync("2025-03-12");
        db.AddRange(Readings(station.Id, FirstOfMarch, new(2025, 3, 10)));
        station.RecordVersion++;
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        var again = await house.StateAsync("2025-03-12");

        (before, after, again).ShouldBe(("open", "unknown", "open"));
    }

    private static IEnumerable<StationReading> Readings(Guid station, LocalDate first, LocalDate last)
    {
        for (var date = first; date <= last; date = date.PlusDays(1))
        {
            // From day to day another, or the checks would take them for a sensor that is stuck.
            yield return Reading(DailyElement.MinTemperatureC, 1 + (date.DayOfYear * 3 % 7 * 0.5), date);
            yield return Reading(DailyElement.MaxTemperatureC, 9 + (date.DayOfYear * 5 % 7 * 0.5), date);
        }

        StationReading Reading(DailyElement element, double value, LocalDate date) => new()
        {
            StationId = station,
            Element = element,
            Date = date,
            Value = value,
            KnownSince = Instant.MinValue,
        };
    }

    private Service.Weather.Forecast Forecast(Guid station, LocalDate from)
    {
        var now = service.Clock.GetCurrentInstant();
        var forecast = new Service.Weather.Forecast { StationId = station, IssuedAt = now, FetchedAt = now };
        for (var day = 0; day < 7; day++)
        {
            Add(DailyElement.MinTemperatureC, 1);
            Add(DailyElement.MaxTemperatureC, 9);
            Add(DailyElement.GustMps, 4);

            void Add(DailyElement element, double value) =>
                forecast.Readings.Add(new() { Element = element, Date = from.PlusDays(day), Value = value });
        }
        return forecast;
    }
}
