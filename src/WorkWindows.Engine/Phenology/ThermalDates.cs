using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>The dates that one thermal-time model gives for the years of a place.</summary>
internal sealed class ThermalDates(DailySeries observed, DailySeries? forecast, ThermalTime model)
{
    private readonly HeatTable seen = new(observed, model);
    private readonly HeatTable coming = new(forecast, model);
    private readonly Dictionary<int, SeasonEvent?> dates = [];

    /// <summary>The years of the observed record, ascending.</summary>
    public IEnumerable<int> Years => seen.Years;

    /// <summary>The event of a year; null when it cannot be told.</summary>
    public SeasonEvent? this[int year] =>
        dates.TryGetValue(year, out var known) ? known : dates[year] = Find(year);

    /// <summary>
    /// The standard deviation of the date, days, when each year of the record in turn gives the heat of the days that
    /// have neither been observed nor forecast; 0 when the date waits for no such day.
    /// </summary>
    public double SpreadDays(int year)
    {
        if (this[year]?.Basis != Basis.Climatology)
            return 0;
        var days = Years.Where(other => other != year)
            .Select(other => Reach(year, other)?.Slot)
            .OfType<int>().Select(slot => (double)slot).ToList();
        var mean = days.Count == 0 ? 0 : days.Average();
        return days.Count < 2 ? 0 : Math.Sqrt(days.Sum(day => (day - mean) * (day - mean)) / (days.Count - 1));
    }

    private SeasonEvent? Find(int year)
    {
        if (Reach(year, null) is not var (slot, filled, years) || HeatTable.DateOf(year, slot) is not { } date)
            return null;
        if (date <= seen.LastDay)
            return filled > LeafOut.MaxFilledDays ? null : new(SeasonEventKind.LeafOut, date, Basis.Observed);
        return date <= coming.LastDay && filled <= LeafOut.MaxFilledDays
            ? new(SeasonEventKind.LeafOut, date, Basis.Forecast)
            : new(SeasonEventKind.LeafOut, date, Basis.Climatology, years);
    }

    /// <summary>
    /// Where the heat of a year suffices, the days filled until then and the fewest years behind one.
    /// </summary>
    /// <param name="year">The year.</param>
    /// <param name="from">
    /// The year that gives the heat of days without a value, where it has one; otherwise, and when null, they have the
    /// mean of all years.
    /// </param>
    private (int Slot, int Filled, int Years)? Reach(int year, int? from)
    {
        var (heat, filled, years) = (0.0, 0, int.MaxValue);
        var last = HeatTable.SlotOf(12, 31);
        for (var slot = HeatTable.SlotOf(model.Start.Month, model.Start.Day); slot <= last; slot++)
        {
            if (HeatTable.DateOf(year, slot) is null)
                continue;
            var today = double.IsNaN(seen[year, slot]) ? coming[year, slot] : seen[year, slot];
            if (double.IsNaN(today))
            {
                (today, var behind) = seen.Normal(slot);
                if (behind < LeafOut.MinYears)
                    return null;
                if (from is { } other && !double.IsNaN(seen[other, slot]))
                    today = seen[other, slot];
                filled++;
                years = Math.Min(years, behind);
            }
            heat += today;
            if (heat >= model.RequiredDegreeDaysC)
                return (slot, filled, years);
        }
        return null;
    }
}
