using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Safety.Checklists;

/// <summary>What a felling day needs to be open besides mild temperatures: a calm forecast, and word of no alerts.</summary>
internal static class CalmWeather
{
    private const double Mps = 3;
    private const int Days = 10;

    public static async Task AddAsync(Consultancy office)
    {
        await using var db = office.Service.Database.Open(office.Organization);
        var forecast = await db.Forecasts.SingleAsync();
        for (var day = 0; day < Days; day++)
        {
            forecast.Readings.Add(new()
            {
                Element = DailyElement.WindMps,
                Date = new LocalDate(2025, 3, 1).PlusDays(day),
                Value = Mps,
            });
        }
        db.Add(new WeatherAlertReport { StationId = forecast.StationId, FetchedAt = office.Service.Clock.GetCurrentInstant() });
        await db.SaveChangesAsync();
    }
}
