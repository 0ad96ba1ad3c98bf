using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>How complete a station's record has been of late.</summary>
internal static class StationCoverage
{
    /// <summary>Leaf-out is predicted from past years, and ten of them tell what is usual.</summary>
    public const int TemperatureYears = 10;

    /// <summary>Wind is asked of single days only, so that older gaps do not matter.</summary>
    public const int WindYears = 5;

    private static readonly DailyElement[] Counted =
        [DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC, DailyElement.WindMps, DailyElement.GustMps];

    /// <summary>Sets what a station's readings tell; the caller saves.</summary>
    /// <param name="db">Where its readings are.</param>
    /// <param name="station">The station.</param>
    /// <param name="added">The readings that were just added; at least one.</param>
    /// <param name="cancellation">Ends the query.</param>
    public static async Task UpdateAsync(
        WorkWindowsDb db, Station station, IReadOnlyCollection<DailyReading> added, CancellationToken cancellation)
    {
        // Readings are never taken away, so the first day can only move outwards.
        var first = added.Min(reading => reading.Date);
        station.FirstDay = station.FirstDay is { } before ? LocalDate.Min(before, first) : first;
        var newest = await db.StationReadings.Where(reading => reading.StationId == station.Id)
            .MaxAsync(reading => reading.Date, cancellation);
        var from = newest.PlusYears(-TemperatureYears);
        var readings = await db.StationReadings.AsNoTracking()
            .Where(reading =>
                reading.StationId == station.Id && reading.Date > from && Counted.Contains(reading.Element))
            .Select(reading => new DailyReading(reading.Date, reading.Element, reading.Value, reading.QualityFlag))
            .ToListAsync(cancellation);
        var series = QualityControl.Check(readings, station.WholeFahrenheit).Usable;
        var last = LastTemperature(series) ?? newest;
        station.LastDay = last;
        station.TemperatureCoverage = StationChoice.Coverage(series, last, TemperatureYears);
        station.WindCoverage = StationChoice.Coverage(
            series, newest, WindYears, DailyElement.WindMps, DailyElement.GustMps);
    }

    /// <summary>
    /// The last day up to which each temperature that the station reads is known; null when it reads none.
    /// </summary>
    private static LocalDate? LastTemperature(DailySeries usable)
    {
        var ends = new[] { DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC }
            .Select(element => usable[element]).OfType<DailyColumn>()
            .Select(column => Enumerable.Range(0, column.Values.Length)
                .LastOrDefault(day => !double.IsNaN(column.Values[day]), -1) is >= 0 and var day
                    ? column.First.PlusDays(day)
                    : (LocalDate?)null)
            .OfType<LocalDate>().ToList();
        return ends.Count == 0 ? null : ends.Min();
    }
}
