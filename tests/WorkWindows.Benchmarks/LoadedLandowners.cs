using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;
using Forecast = WorkWindows.Service.Weather.Forecast;

namespace WorkWindows.Benchmarks;

/// <summary>Landowners with a property and a task each, all of whom are to be told of good days.</summary>
internal sealed class LoadedLandowners(ReadingsServer server, int count)
{
    /// <summary>Four in the morning in Detroit.</summary>
    public static readonly Instant Night = Instant.FromUtc(2026, 2, 2, 9, 0);

    private const int Stations = 20;
    private const int ForecastDays = 10;
    private const int RowsAtOnce = 500;

    private static readonly LocalDate Today = new(2026, 2, 2);

    public async Task LoadAsync()
    {
        var stations = await StationsAsync();
        foreach (var numbers in Enumerable.Range(0, count).Chunk(RowsAtOnce))
        {
            await using var db = server.Open();
            foreach (var number in numbers)
                db.AddRange(Rows(number, stations[number % Stations]));
            await db.SaveChangesAsync();
        }
        await server.ExecuteAsync("vacuum analyze");
    }

    private async Task<List<Guid>> StationsAsync()
    {
        await using var db = server.Open();
        var ids = new List<Guid>();
        for (var number = 0; number < Stations; number++)
        {
            var station = new Station
            {
                GhcnId = $"USC{number:00000000}",
                Name = $"Station {number}",
                Latitude = 42.7,
                Longitude = -84.5,
                WholeFahrenheit = true,
            };
            db.AddRange(station, Mild(station.Id), new WeatherAlertReport { StationId = station.Id, FetchedAt = Night });
            ids.Add(station.Id);
        }
        await db.SaveChangesAsync();
        return ids;
    }

    private static Forecast Mild(Guid station)
    {
        var forecast = new Forecast { StationId = station, IssuedAt = Night, FetchedAt = Night };
        foreach (var (element, value) in new[]
        {
            (DailyElement.MinTemperatureC, -3d), (DailyElement.MaxTemperatureC, 1), (DailyElement.WindMps, 2),
            (DailyElement.GustMps, 4), (DailyElement.PrecipitationMm, 0),
        })
        {
            for (var day = 0; day < ForecastDays; day++)
                forecast.Readings.Add(new() { Element = element, Date = Today.PlusDays(day), Value = value });
        }
        return forecast;
    }

    private static object[] Rows(int number, Guid station)
    {
        var address = $"owner{number}@example.org";
        var owner = new Person
        {
            DisplayName = $"Owner {number}",
            Role = Role.Landowner,
            Email = address,
            UserName = address,
            NormalizedUserName = address.ToUpperInvariant(),
            SecurityStamp = address,
        };
        var property = new Property
        {
            Key = $"P-{number}",
            Name = $"Property {number}",
            LandownerId = owner.Id,
            CountyFips = "26065",
            State = "MI",
            TimeZone = "America/Detroit",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = $"N-{number}",
            Name = "North Forty",
            Latitude = 42.7,
            Longitude = -84.5,
            Stand = [new("sugar maple", 4, 8, 120)],
        };
        var link = new ParcelStation
        {
            ParcelId = parcel.Id,
            StationId = station,
            Purpose = StationPurpose.Temperature,
            DistanceM = 900,
        };
        var task = new PlannedTask { Key = $"T-{number}", ParcelId = parcel.Id, PracticeId = "tie-down", CrewSize = 2 };
        return [owner, property, parcel, link, task];
    }
}
