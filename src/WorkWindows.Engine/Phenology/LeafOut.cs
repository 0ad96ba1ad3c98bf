using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Predicts the day on which the canopy's buds break from daily minima and maxima. Source: docs/rules/leaf-out.md.
/// </summary>
public static class LeafOut
{
    /// <summary>More days than this without a value leave a past year without an event.</summary>
    public const int MaxFilledDays = 10;

    /// <summary>The years with a value on a calendar day that it takes to fill that day in another year.</summary>
    public const int MinYears = 5;

    /// <summary>
    /// Sugar maple, the earliest of the large canopy trees: oaks, ash, beech and red maple follow it by 3 to 11 days.
    /// </summary>
    public static ThermalTime Default => BudBreak.SugarMaple.FromMarch;

    /// <summary>The leaf-out of each year that can be told, ascending.</summary>
    /// <param name="firstYear">The first year asked for.</param>
    /// <param name="lastYear">The last year asked for, included.</param>
    /// <param name="observed">The station's record, as many years as there are.</param>
    /// <param name="forecast">Days after it, or null; an observed day wins over a forecast one.</param>
    /// <param name="model">The species' model; <see cref="Default"/> when null.</param>
    /// <returns>
    /// The basis is Observed when the day is no later than the last observed one, Forecast when no later than the last
    /// forecast one, and otherwise Climatology with the fewest years behind any day filled. A day without a value is
    /// filled with the mean heat of its calendar day in the other years. No event in a year that needs a day with
    /// fewer than <see cref="MinYears"/> such years, or more than <see cref="MaxFilledDays"/> filled days in a season
    /// that is over.
    /// </returns>
    public static ImmutableArray<SeasonEvent> Predict(
        int firstYear, int lastYear, DailySeries observed, DailySeries? forecast = null, ThermalTime? model = null)
    {
        model ??= Default;
        var seen = new HeatTable(observed, model);
        var coming = new HeatTable(forecast, model);
        var events = ImmutableArray.CreateBuilder<SeasonEvent>();
        for (var year = firstYear; year <= lastYear; year++)
        {
            if (Predict(year, seen, coming, model) is { } leafOut)
                events.Add(leafOut);
        }
        return events.ToImmutable();
    }

    private static SeasonEvent? Predict(int year, HeatTable seen, HeatTable coming, ThermalTime model)
    {
        var (heat, filled, years) = (0.0, 0, int.MaxValue);
        var last = HeatTable.SlotOf(12, 31);
        for (var slot = HeatTable.SlotOf(model.Start.Month, model.Start.Day); slot <= last; slot++)
        {
            if (HeatTable.DateOf(year, slot) is not { } date)
                continue;
            var today = double.IsNaN(seen[year, slot]) ? coming[year, slot] : seen[year, slot];
            if (double.IsNaN(today))
            {
                (today, var behind) = seen.Normal(slot);
                if (behind < MinYears)
                    return null;
                filled++;
                years = Math.Min(years, behind);
            }
            heat += today;
            if (heat >= model.RequiredDegreeDaysC)
                return Event(date, filled, years, seen.LastDay, coming.LastDay);
        }
        return null;
    }

    private static SeasonEvent? Event(
        LocalDate date, int filled, int years, LocalDate? observedTo, LocalDate? forecastTo)
    {
        if (date <= observedTo)
            return filled > MaxFilledDays ? null : new(SeasonEventKind.LeafOut, date, Basis.Observed);
        return date <= forecastTo && filled <= MaxFilledDays
            ? new(SeasonEventKind.LeafOut, date, Basis.Forecast)
            : new(SeasonEventKind.LeafOut, date, Basis.Climatology, years);
    }
}
