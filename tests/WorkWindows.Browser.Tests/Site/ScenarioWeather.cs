using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>Seven invented years of a station, and a week's forecast with a cold spell and a windy Sunday.</summary>
internal static class ScenarioWeather
{
    private const double MpsPerMph = 0.44704;

    private static readonly LocalDate Today = new(2026, 2, 3);

    /// <summary>Minimum and maximum °F, wind and gust mph, of today and the six days after.</summary>
    private static readonly (int MinF, int MaxF, int WindMph, int GustMph)[] Coming =
    [
        (24, 36, 8, 14), (17, 29, 10, 16), (14, 27, 9, 15), (12, 28, 6, 11),
        (22, 35, 12, 18), (28, 39, 21, 33), (30, 41, 9, 15),
    ];

    public static Station Add(WorkWindowsDb db)
    {
        var station = new Station
        {
            GhcnId = "USC00990001",
            Name = "Fernhollow mill",
            Latitude = 42.21,
            Longitude = -83.68,
            ElevationM = 250,
            WholeFahrenheit = true,
            FirstDay = Observed().First().Date,
            LastDay = Observed().Last().Date,
        };
        db.Add(station);
        foreach (var reading in Observed())
        {
            db.Add(new StationReading
            {
                StationId = station.Id,
                Element = reading.Element,
                Date = reading.Date,
                Value = reading.Value,
                KnownSince = Instant.MinValue,
            });
        }
        var forecast = new Service.Weather.Forecast
        {
            StationId = station.Id,
            IssuedAt = Scenario.Now - Duration.FromHours(2),
            FetchedAt = Scenario.Now,
        };
        foreach (var reading in Coming.SelectMany((day, index) => Readings(Today.PlusDays(index), day)))
        {
            forecast.Readings.Add(new() { Element = reading.Element, Date = reading.Date, Value = reading.Value });
        }
        db.AddRange(forecast, new WeatherAlertReport { StationId = station.Id, FetchedAt = Scenario.Now });
        return station;
    }

    private static IEnumerable<DailyReading> Observed()
    {
        var days = DaySpan.Between(new(2019, 1, 1), Today.PlusDays(-1));
        for (var index = 0; index < days.Count; index++)
        {
            var day = days[index];
            var season = -Math.Cos(2 * Math.PI * (day.DayOfYear - 20) / 365.25);
            var spell = 9 * Math.Sin(index * 0.37) + 5 * Math.Sin(index * 1.13);
            var minF = index >= days.Count - 5 ? 25 : (int)Math.Round(40 + 23 * season + spell);
            var wind = (int)Math.Round(10 + 4 * Math.Sin(index * 0.71) + 4 * Math.Sin(index * 0.29));
            foreach (var reading in Readings(day, (minF, minF + 14 + (int)Math.Round(6 * season), wind, wind + 7)))
                yield return reading;
        }
    }

    private static DailyReading[] Readings(LocalDate day, (int MinF, int MaxF, int WindMph, int GustMph) weather) =>
    [
        new(day, DailyElement.MinTemperatureC, Celsius(weather.MinF), null),
        new(day, DailyElement.MaxTemperatureC, Celsius(weather.MaxF), null),
        new(day, DailyElement.WindMps, weather.WindMph * MpsPerMph, null),
        new(day, DailyElement.GustMps, weather.GustMph * MpsPerMph, null),
        new(day, DailyElement.PrecipitationMm, 0, null),
    ];

    /// <summary>In tenths, as station files keep it.</summary>
    private static double Celsius(int fahrenheit) => Math.Round((fahrenheit - 32) / 1.8, 1);
}
