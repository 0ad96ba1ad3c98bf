using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Demo;

/// <summary>
/// Brings the invented weather up to yesterday, the forecast to the days from today on, and says that no alert is in
/// force: invented warnings could be taken for real ones.
/// </summary>
public sealed class DemoWeather(
    WorkWindowsDb db, CurrentOrganization organization, StationReadings readings, StationAssignment stations,
    IClock clock)
{
    private const int YearsOfRecord = 17;
    private const int ForecastDays = 7;

    /// <summary>Forecasts are made again after some hours, as weather services do.</summary>
    private static readonly Duration ForecastLife = Duration.FromHours(6);

    /// <summary>Adds the invented stations to the current organization.</summary>
    public async Task CreateAsync(CancellationToken cancellation)
    {
        foreach (var invented in InventedStation.All)
        {
            db.Add(new Station
            {
                GhcnId = invented.GhcnId,
                Name = invented.Name,
                Latitude = invented.Latitude,
                Longitude = invented.Longitude,
                ElevationM = invented.ElevationM,
                WholeFahrenheit = true,
            });
        }
        await db.SaveChangesAsync(cancellation);
        await TopUpAsync(cancellation);
    }

    /// <returns>Whether the current organization has the invented stations; others are left alone.</returns>
    public async Task<bool> TopUpAsync(CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var stored = await db.Stations.Where(station => station.GhcnId.StartsWith(InventedStation.IdStart))
            .ToDictionaryAsync(station => station.GhcnId, cancellation);
        if (stored.Count == 0)
            return false;
        foreach (var invented in InventedStation.All.Where(invented => stored.ContainsKey(invented.GhcnId)))
            await TopUpAsync(invented, stored[invented.GhcnId], cancellation);
        await db.SaveChangesAsync(cancellation);
        await stations.AssignAsync(cancellation);
        await change.CommitAsync(cancellation);
        return true;
    }

    private async Task TopUpAsync(InventedStation invented, Station station, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[invented.TimeZone]).Date;
        var first = station.LastDay?.PlusDays(1) ?? today.PlusYears(-YearsOfRecord);
        if (first < today)
            await readings.MergeAsync(station, [.. invented.Readings(first, today.PlusDays(-1))], cancellation);
        db.Add(new WeatherAlertReport { StationId = station.Id, FetchedAt = now });
        var recent = now - ForecastLife;
        if (await db.Forecasts.AnyAsync(
            kept => kept.StationId == station.Id && kept.IssuedAt > recent && kept.IssuedAt <= now, cancellation))
        {
            return;
        }
        var forecast = new Forecast { StationId = station.Id, IssuedAt = now, FetchedAt = now };
        foreach (var reading in invented.Forecast(today, today.PlusDays(ForecastDays - 1)))
            forecast.Readings.Add(new() { Element = reading.Element, Date = reading.Date, Value = reading.Value });
        db.Add(forecast);
    }
}
