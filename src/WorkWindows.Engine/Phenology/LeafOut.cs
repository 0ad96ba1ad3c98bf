using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Predicts the day on which the canopy's buds break from daily minima and maxima, and from the days on which they were
/// seen to break at the same place in other years. Source: docs/rules/leaf-out.md.
/// </summary>
public static class LeafOut
{
    /// <summary>More days than this without a value leave a past year without an event.</summary>
    public const int MaxFilledDays = 10;

    /// <summary>The years with a value on a calendar day that it takes to fill that day in another year.</summary>
    public const int MinYears = 5;

    /// <summary>
    /// A spring seen this many days or more from the date of the model is a mistake of a month and not used. Source:
    /// Schaber and Badeck 2002, doi:10.1093/treephys/22.14.973.
    /// </summary>
    public const int MonthMistakeDays = 30;

    /// <summary>How far years lie about each prediction at one place, as a standard deviation in days.</summary>
    public const double MarchSdDays = 5;

    /// <inheritdoc cref="MarchSdDays"/>
    public const double JanuarySdDays = 9;

    /// <inheritdoc cref="MarchSdDays"/>
    public const double RegionalSdDays = 7;

    private const int MinRegionalYears = 3;

    /// <summary>The 90 % quantile of the standard normal distribution: between it and its negative lie 80 %.</summary>
    private const double NormalQuantile90 = 1.2816;

    /// <summary>
    /// Sugar maple, the earliest of the large canopy trees: oaks, ash, beech and red maple follow it by 3 to 11 days.
    /// </summary>
    public static BudBreak Default => BudBreak.SugarMaple;

    /// <summary>The leaf-out of each year that can be told, ascending, with an interval of 80 %.</summary>
    /// <param name="firstYear">The first year asked for.</param>
    /// <param name="lastYear">The last year asked for, included.</param>
    /// <param name="observed">
    /// The station's record, as many years as there are. Maxima that stand a day late are put back.
    /// </param>
    /// <param name="forecast">Days after it, or null; an observed day wins over a forecast one.</param>
    /// <param name="species">The species; <see cref="Default"/> when null.</param>
    /// <param name="seen">
    /// The days on which leaf-out was seen at the place, one a year at most; that of the year predicted is left out.
    /// </param>
    /// <returns>
    /// Without a spring seen, the date of the species' model from March. Otherwise the mean of that date, of the model
    /// from January and of the mean date of all years, each corrected by what the springs seen say of it and weighted
    /// by how well it tells them.
    /// The basis is Observed when the models' days are no later than the last observed one, Forecast when no later than
    /// the last forecast one, and otherwise Climatology with the fewest years behind any day filled. A day without a
    /// value is filled with the mean heat of its calendar day in the other years. No event in a year that needs a day
    /// with fewer than <see cref="MinYears"/> such years, or more than <see cref="MaxFilledDays"/> filled days in a
    /// season that is over.
    /// </returns>
    /// <exception cref="ArgumentException">A year was seen twice.</exception>
    public static ImmutableArray<SeasonEvent> Predict(
        int firstYear, int lastYear, DailySeries observed, DailySeries? forecast = null, BudBreak? species = null,
        IEnumerable<LocalDate>? seen = null)
    {
        species ??= Default;
        var record = ShiftedMaxima.PutBack(observed);
        var march = new ThermalDates(record, forecast, species.FromMarch);
        var january = new ThermalDates(record, forecast, species.FromJanuaryBase5);
        var springs = (seen ?? []).ToDictionary(date => date.Year);
        var events = ImmutableArray.CreateBuilder<SeasonEvent>();
        for (var year = firstYear; year <= lastYear; year++)
        {
            if (march[year] is not { } date)
                continue;
            var earlier = springs.Values
                .Where(day => day.Year != year && march[day.Year] is { } told && !IsMonthMistake(day, told.Date))
                .OrderBy(day => day).ToList();
            events.Add(earlier is []
                ? Event(date, SpringMix.Of([Thermal(march, year, MarchSdDays, [])]))
                : Mixed(year, march, january, earlier));
        }
        return events.ToImmutable();
    }

    private static bool IsMonthMistake(LocalDate seen, LocalDate told) =>
        Math.Abs(Period.DaysBetween(told, seen)) >= MonthMistakeDays;

    private static SeasonEvent Mixed(int year, ThermalDates march, ThermalDates january, List<LocalDate> earlier)
    {
        var told = march[year]!;
        var candidates = ImmutableArray.CreateBuilder<SpringMix.Candidate>();
        candidates.Add(Thermal(march, year, MarchSdDays, earlier));
        if (january[year] is { } fromJanuary && earlier.All(day => january[day.Year] is not null))
        {
            candidates.Add(Thermal(january, year, JanuarySdDays, earlier));
            told = fromJanuary.Basis > told.Basis ? fromJanuary : told;
        }
        var others = march.Years.Where(other => other != year).Select(other => march[other]).OfType<SeasonEvent>()
            .Select(e => (double)e.Date.DayOfYear).ToList();
        if (others.Count >= MinRegionalYears)
        {
            var mean = others.Average();
            candidates.Add(new(mean, RegionalSdDays, 0, [.. earlier.Select(day => day.DayOfYear - mean)]));
        }
        return Event(told, SpringMix.Of(candidates.ToImmutable()));
    }

    private static SpringMix.Candidate Thermal(
        ThermalDates dates, int year, double residualSdDays, List<LocalDate> earlier) => new(
        dates[year]!.Date.DayOfYear, residualSdDays, dates.SpreadDays(year),
        [.. earlier.Select(day => (double)Period.DaysBetween(dates[day.Year]!.Date, day))]);

    private static SeasonEvent Event(SeasonEvent told, (double Day, double SdDays) mix)
    {
        return told with
        {
            Date = On(mix.Day),
            Earliest = On(mix.Day - NormalQuantile90 * mix.SdDays),
            Latest = On(mix.Day + NormalQuantile90 * mix.SdDays),
        };

        LocalDate On(double dayOfYear) =>
            new LocalDate(told.Date.Year, 1, 1).PlusDays((int)Math.Round(dayOfYear) - 1);
    }
}
