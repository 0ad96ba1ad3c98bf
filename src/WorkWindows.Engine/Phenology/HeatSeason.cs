using System.Collections.Immutable;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>The heat of a spring as it adds up from day to day.</summary>
/// <param name="Year">The year.</param>
/// <param name="SumsC">
/// Degree-days in °C from the model's start to the end of each calendar day, 29 February left out; NaN from the first
/// day on that cannot be told.
/// </param>
/// <param name="ObservedDays">The first so many of them rest on no forecast.</param>
public sealed record HeatSeason(int Year, ImmutableArray<double> SumsC, int ObservedDays)
{
    /// <summary>The seasons of all years of a record, ascending, as a thermal-time model counts their heat.</summary>
    /// <param name="observed">The record. Maxima that stand a day late are put back.</param>
    /// <param name="forecast">Days after it, or null; an observed day wins over a forecast one.</param>
    /// <param name="model">Start and base.</param>
    /// <param name="days">How many days from the start on, which must lie in one year.</param>
    /// <returns>
    /// A day without a value before a known one has the mean heat of its calendar day in the other years, up to
    /// <see cref="LeafOut.MaxFilledDays"/> times a season and where <see cref="LeafOut.MinYears"/> years have it; with
    /// more the season ends before it. Years without any day are left out.
    /// </returns>
    /// <remarks>Source: docs/rules/leaf-out.md.</remarks>
    public static ImmutableArray<HeatSeason> Of(
        DailySeries observed, DailySeries? forecast, ThermalTime model, int days)
    {
        var (seen, coming) = (new HeatTable(ShiftedMaxima.PutBack(observed), model), new HeatTable(forecast, model));
        return
        [
            .. seen.Years.Union(coming.Years).Order().Select(year => Of(year, seen, coming, model, days))
                .Where(season => !double.IsNaN(season.SumsC[0])),
        ];
    }

    private static HeatSeason Of(int year, HeatTable seen, HeatTable coming, ThermalTime model, int days)
    {
        var start = HeatTable.SlotOf(model.Start.Month, model.Start.Day);
        var slots = Enumerable.Range(start, days).ToArray();
        var heat = slots.Select(slot => seen[year, slot]).ToArray();
        for (var day = 0; day < days; day++)
            heat[day] = double.IsNaN(heat[day]) ? coming[year, slots[day]] : heat[day];
        var last = Array.FindLastIndex(heat, value => !double.IsNaN(value));
        var (sum, filled) = (0.0, 0);
        var sums = new double[days];
        Array.Fill(sums, double.NaN);
        for (var day = 0; day <= last; day++)
        {
            if (double.IsNaN(heat[day]))
            {
                (heat[day], var years) = seen.Normal(slots[day]);
                if (years < LeafOut.MinYears || ++filled > LeafOut.MaxFilledDays)
                    break;
            }
            sums[day] = sum += heat[day];
        }
        return new(year, [.. sums], Array.FindLastIndex(slots, slot => !double.IsNaN(seen[year, slot])) + 1);
    }
}
