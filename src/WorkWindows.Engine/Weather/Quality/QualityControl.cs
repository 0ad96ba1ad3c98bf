using System.Collections.Immutable;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Parts a station's readings into what may be used and what may not, by the record alone. Source:
/// docs/rules/weather-quality.md.
/// </summary>
public static class QualityControl
{
    /// <summary>
    /// Checks in the order of <see cref="RejectionReason"/>: a value that one check rejects is not seen by the next.
    /// </summary>
    /// <param name="readings">In any order, gaps allowed; a day may be there twice.</param>
    /// <param name="readsUsUnits">
    /// Whether the station is taken to read whole °F, whole mph and inches where its record is too short to tell.
    /// </param>
    /// <returns>Both parts; an element that has nothing left to use still has a column.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static CheckedSeries Check(IReadOnlyCollection<DailyReading> readings, bool readsUsUnits)
    {
        readsUsUnits = WholeDegrees.AreFahrenheit(readings) ?? readsUsUnits;
        var columns = readings.GroupBy(reading => reading.Element)
            .ToImmutableSortedDictionary(group => group.Key, group => CheckedColumn.Of(group.Key, [.. group]));
        var min = columns.GetValueOrDefault(DailyElement.MinTemperatureC);
        var max = columns.GetValueOrDefault(DailyElement.MaxTemperatureC);
        foreach (var column in columns.Values)
            ValueBounds.Check(column);
        if (min is not null && max is not null)
            DailyRange.RejectCrossed(min, max);
        foreach (var column in columns.Values)
        {
            StuckRuns.Check(column);
            RepeatedMonths.Check(column);
        }
        if (min is not null && max is not null)
            DailyRange.Check(min, max);
        foreach (var column in new[] { min, max }.OfType<CheckedColumn>())
        {
            var axis = new DayAxis(column.First, column.Values.Length);
            Spikes.Check(column, axis);
            OutOfSeason.Check(column, axis);
        }
        return new(
            DailySeries.Of(columns.ToImmutableSortedDictionary(
                pair => pair.Key, pair => pair.Value.ToColumn(readsUsUnits))),
            [.. columns.Values.SelectMany(column => column.Rejected)]);
    }
}
