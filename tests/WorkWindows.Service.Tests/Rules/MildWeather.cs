using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Rules;

/// <summary>A forecast of spring days on which no shipped rule sends anybody home.</summary>
internal static class MildWeather
{
    private static readonly LocalDate First = new(2025, 3, 1);

    /// <summary>Gives a parcel a station whose forecast reaches from March to May 2025.</summary>
    public static async Task AddAsync(ServiceFixture service, Guid organization, Guid parcel)
    {
        var now = service.Clock.GetCurrentInstant();
        var station = new Station
        {
            GhcnId = $"{Guid.NewGuid():N}"[..11],
            Name = "Larkspur",
            Latitude = 42.6,
            Longitude = -84.4,
            WholeFahrenheit = true,
        };
        var forecast = new Service.Weather.Forecast { StationId = station.Id, IssuedAt = now, FetchedAt = now };
        for (var date = First; date.Month < 6; date = date.PlusDays(1))
        {
            Add(DailyElement.MinTemperatureC, 1);
            Add(DailyElement.MaxTemperatureC, 9);
            Add(DailyElement.GustMps, 4);

            void Add(DailyElement element, double value) =>
                forecast.Readings.Add(new() { Element = element, Date = date, Value = value });
        }
        await using var db = service.Database.Open(organization);
        db.AddRange(station, forecast);
        db.AddRange(Enum.GetValues<StationPurpose>().Select(purpose => new ParcelStation
        {
            ParcelId = parcel,
            StationId = station.Id,
            Purpose = purpose,
            DistanceM = 900,
        }));
        await db.SaveChangesAsync();
    }
}
