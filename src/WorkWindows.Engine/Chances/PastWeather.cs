using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>
/// A place's record, prepared so that each of its years can continue the present. Made once a record; safe for use by
/// several threads.
/// </summary>
/// <remarks>Source: docs/rules/chances.md.</remarks>
public sealed class PastWeather
{
    /// <summary>A year must have at least this share of the days that are asked of it, minimum and maximum.</summary>
    public const double MinCoverage = 0.9;

    private readonly Dictionary<DailyElement, PastColumn> columns = [];

    /// <param name="observed">The record.</param>
    public PastWeather(DailySeries observed)
    {
        Observed = observed;
        foreach (var element in Enum.GetValues<DailyElement>())
        {
            if (observed[element] is not { } column)
                continue;
            var read = column.AsRead(element);
            var isTemperature = element is DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC;
            var usual = isTemperature ? DailyUsual.Of(read) : null;
            columns[element] = new(read, usual, column.ReadsUsUnits);
        }
        Heat = ShiftedMaxima.PutBack(observed);
        HeatMinC = OfHeat(DailyElement.MinTemperatureC);
        HeatMaxC = OfHeat(DailyElement.MaxTemperatureC);

        PastColumn? OfHeat(DailyElement element) => Heat[element] is { } column
            ? new(column, columns[element].Usual, fillsGaps: true)
            : null;
    }

    public DailySeries Observed { get; }

    /// <summary>The record with minima and maxima on the days that they belong to, for sums of heat.</summary>
    internal DailySeries Heat { get; }

    internal PastColumn? HeatMinC { get; }

    internal PastColumn? HeatMaxC { get; }

    /// <summary>An element as it was read, or null when none is in the record.</summary>
    internal PastColumn? this[DailyElement element] => columns.GetValueOrDefault(element);

    /// <summary>
    /// The years before that of a day, the newest first, whose weather can follow it: those with enough of the
    /// temperatures of the days after it.
    /// </summary>
    /// <param name="after">The last day that is known.</param>
    /// <param name="days">How many days after it are asked for.</param>
    /// <param name="most">The most years.</param>
    public ImmutableArray<int> YearsBefore(LocalDate after, int days, int most)
    {
        var first = Observed[DailyElement.MinTemperatureC]?.First.Year ?? after.Year;
        return
        [
            .. Enumerable.Range(1, Math.Max(0, after.Year - first)).Select(back => after.Year - back)
                .Where(year => Covers(year, after, days)).Take(most),
        ];
    }

    /// <summary>Whether a year has enough of the temperatures of the days that follow the same day in it.</summary>
    public bool Covers(int year, LocalDate after, int days)
    {
        var first = after.PlusYears(year - after.Year).PlusDays(1);
        return StationChoice.Coverage(
            Observed, new(first, days), DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC) >= MinCoverage;
    }
}
