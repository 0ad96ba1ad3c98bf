using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Forecasts;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Forecasts;

/// <summary>Payloads of the service (CC0), whose times were moved so that they are odd to the second.</summary>
public class RealPayloadTests
{
    [Fact]
    public void Read_GivesHandReadValues_OfAlbany()
    {
        var forecast = Read("ALY/71,67", "America/New_York");
        Assert.Equal(Instant.FromUtc(2026, 4, 12, 10, 27, 58), forecast.IssuedAt);
        Assert.True(forecast.Faults.IsEmpty, forecast.Faults.ToString());
        // "2026-04-12T03:51:13+00:00/PT13H", 29.44: 11 April 23:51 EDT to 12 April 12:51.
        Assert.Equal(29.44, Value(forecast, 12, MaxTemperatureC), 0.005);
        // "2026-04-12T15:51:12+00:00/PT14H", 18.89: ends on 13 April 1:51 EDT.
        Assert.Equal(18.89, Value(forecast, 13, MinTemperatureC), 0.005);
        Assert.Equal(15.56, Value(forecast, 20, MinTemperatureC), 0.005);
        // The 2 hours left of the first night give no minimum; the hours of the 12th do, from 23:51 the day before.
        Assert.Equal(18.89, Value(forecast, 12, MinTemperatureC), 0.005);
    }

    [Theory]
    [InlineData("ALY/71,67", "America/New_York")]
    [InlineData("BOX/70,82", "America/New_York")]
    [InlineData("MPX/1,1", "America/Chicago")]
    public void Read_GivesAWeekOfPlausibleDays(string gridpoint, string zone)
    {
        var days = Read(gridpoint, zone).Readings.ToLookup(reading => reading.Date);
        for (var date = new LocalDate(2026, 4, 13); date <= new LocalDate(2026, 4, 18); date = date.PlusDays(1))
        {
            var day = days[date].ToDictionary(reading => reading.Element, reading => reading.Value);
            Assert.Equal([MinTemperatureC, MaxTemperatureC, WindMps, GustMps], day.Keys.Order());
            Assert.True(day[MinTemperatureC] <= day[MaxTemperatureC], $"{date}");
            Assert.True(day[WindMps] <= day[GustMps], $"{date}");
        }
    }

    private static double Value(DailyForecast forecast, int day, DailyElement element) =>
        forecast.Readings
            .Single(reading => reading.Date == new LocalDate(2026, 4, day) && reading.Element == element)
            .Value;

    private static DailyForecast Read(string gridpoint, string zone) => GridpointForecast.Read(
        File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast/gridpoints/{gridpoint}.json")),
        DateTimeZoneProviders.Tzdb[zone]);
}
