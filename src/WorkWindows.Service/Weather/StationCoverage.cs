using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>How complete a station's record has been of late.</summary>
internal static class StationCoverage
{
    /// <summary>Leaf-out is predicted from past years, and ten of them tell what is usual.</summary>
    public const int TemperatureYears = 10;

    /// <summary>Wind is asked of single days only, so that older gaps do not matter.</summary>
    public const int WindYears = 5;

    /// <summary>Sets what a station's readings tell; the caller saves.</summary>
    public static async Task UpdateAsync(WorkWindowsDb db, Station station, CancellationToken cancellation)
    {
        var all = db.StationReadings.AsNoTracking().Where(reading => reading.StationId == station.Id);
        (station.FirstDay, station.LastDay) = (
            await all.MinAsync(reading => (LocalDate?)reading.Date, cancellation),
            await all.MaxAsync(reading => (LocalDate?)reading.Date, cancellation));
        if (station.LastDay is not { } last)
            return;
        var from = last.PlusYears(-TemperatureYears);
        var readings = await all.Where(reading => reading.Date > from)
            .Select(reading => new DailyReading(reading.Date, reading.Element, reading.Value, reading.QualityFlag))
            .ToListAsync(cancellation);
        var series = DailySeries.Of(readings);
        station.TemperatureCoverage = StationChoice.Coverage(series, last, TemperatureYears);
        station.WindCoverage = StationChoice.Coverage(
            series, last, WindYears, DailyElement.WindMps, DailyElement.GustMps);
    }
}
