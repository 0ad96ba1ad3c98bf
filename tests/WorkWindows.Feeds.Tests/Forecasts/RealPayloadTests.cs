using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
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

    [Fact]
    public void Read_GivesHandReadValues_OfMinneapolis()
    {
        var forecast = Read("MPX/1,1", "America/Chicago");
        // The day begins at 5 h UTC. "2026-04-13T23:21:04/PT6H" 2.286 mm, of which 21 min 4 s belong to the 14th, then
        // 5.842, 3.048, 4.064 and, but for those 21 minutes, "2026-04-14T23:21:04/PT6H" 1.778.
        Assert.Equal(2.286 * 21.0667 / 360 + 5.842 + 3.048 + 4.064 + 1.778 * 338.9333 / 360,
            Value(forecast, 14, PrecipitationMm), 0.001);
        // "2026-04-14T02:21:04+00:00/PT3H", 8: the evening of the 13th, 21:21 to 0:21 CDT.
        Assert.Equal(8, Value(forecast, 13, ThunderChancePercent));
    }

    [Fact]
    public void Read_GivesRain_AsFarAsItIsForecast()
    {
        // The rain of Albany ends on 15 April 11:51 EDT; the other layers go on.
        var days = Read("ALY/71,67", "America/New_York").Readings
            .Where(reading => reading.Element == PrecipitationMm).Select(reading => reading.Date.Day);
        Assert.Equal([12, 13, 14], days);
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
            Assert.Equal(
                [MinTemperatureC, MaxTemperatureC, WindMps, GustMps, MinHumidityPercent, ThunderChancePercent],
                day.Keys.Except([PrecipitationMm]).Order());
            Assert.InRange(day[MinHumidityPercent], 5, 100);
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
        DateTimeZoneProviders.Tzdb[zone], Instant.FromUtc(2026, 4, 12, 12, 0));
}
