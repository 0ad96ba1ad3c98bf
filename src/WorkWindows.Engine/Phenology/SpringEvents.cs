using NodaTime;
using UnitsNet;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// The events of spring that temperatures alone tell: first leaf and bloom of the index, and the last frost.
/// </summary>
public static class SpringEvents
{
    /// <summary>Fewer past years than this do not tell when the last frost of a year to come is.</summary>
    public const int MinYears = 10;

    private const double EarlyShare = 0.1, MiddleShare = 0.5, LateShare = 0.9;

    /// <summary>The events of some years that can be told, in any order.</summary>
    /// <param name="firstYear">The first year asked for.</param>
    /// <param name="lastYear">The last year asked for, included.</param>
    /// <param name="observed">The station's record, as many years as there are.</param>
    /// <param name="forecast">Days after it, or null.</param>
    /// <param name="latitudeDeg">North positive.</param>
    /// <returns>
    /// First leaf and bloom only once observed and forecast days without a gap reach them, or in a season whose gaps
    /// the index can fill. The last frost at or below 28 °F as observed in a spring that is over; otherwise its median
    /// over at least <see cref="MinYears"/> past springs with the 80 % interval (quantiles of type 8).
    /// </returns>
    public static IEnumerable<SeasonEvent> Of(
        int firstYear, int lastYear, DailySeries observed, DailySeries? forecast, double latitudeDeg)
    {
        for (var year = firstYear; year <= lastYear; year++)
        {
            foreach (var e in Index(year, observed, forecast, latitudeDeg))
                yield return e;
        }
        foreach (var e in LastFrosts(firstYear, lastYear, observed))
            yield return e;
    }

    private static IEnumerable<SeasonEvent> Index(
        int year, DailySeries observed, DailySeries? forecast, double latitudeDeg)
    {
        var days = new DaySpan(new(year, 1, 1), SpringIndex.Days);
        var (max, lastMax) = ReadF(DailyElement.MaxTemperatureC, days, observed, forecast);
        var (min, _) = ReadF(DailyElement.MinTemperatureC, days, observed, forecast);
        var index = SpringIndex.Over(SpringGaps.Filled(max) ?? max, SpringGaps.Filled(min) ?? min, latitudeDeg);
        if (index.LeafDay is { } leaf)
            yield return Event(SeasonEventKind.FirstLeaf, leaf);
        if (index.BloomDay is { } bloom)
            yield return Event(SeasonEventKind.FirstBloom, bloom);

        SeasonEvent Event(SeasonEventKind kind, int dayOfYear)
        {
            var date = days[dayOfYear - 1];
            return new(kind, date, date <= lastMax ? Basis.Observed : Basis.Forecast);
        }
    }

    private static (double[] ValuesF, LocalDate? LastObserved) ReadF(
        DailyElement element, DaySpan days, DailySeries observed, DailySeries? forecast)
    {
        var values = new double[days.Count];
        Array.Fill(values, double.NaN);
        Lay(forecast?[element]);
        Lay(observed[element]);
        return (values, observed[element]?.Last);

        void Lay(DailyColumn? column)
        {
            if (column is null)
                return;
            var known = new double[days.Count];
            column.CopyTo(days, known);
            for (var day = 0; day < known.Length; day++)
            {
                if (double.IsNaN(known[day]))
                    continue;
                var degF = Temperature.FromDegreesCelsius(known[day]).DegreesFahrenheit;
                values[day] = column.ReadsUsUnits ? Math.Round(degF) : degF;
            }
        }
    }

    private static IEnumerable<SeasonEvent> LastFrosts(int firstYear, int lastYear, DailySeries observed)
    {
        if (observed[DailyElement.MinTemperatureC] is not { } min)
            yield break;
        var springs = SpringFrost.Over(min, SpringFreeze.HardFreezeF).Where(spring => spring.LastDay is not null)
            .ToDictionary(spring => spring.Year, spring => spring.LastDay!.Value);
        double[] slots = [.. springs.Values.Select(date => (double)HeatTable.SlotOf(date.Month, date.Day))];
        for (var year = firstYear; year <= lastYear; year++)
        {
            if (springs.TryGetValue(year, out var seen))
                yield return new(SeasonEventKind.LastSpringFrost, seen, Basis.Observed);
            else if (min.Last < new LocalDate(year, 6, 30) && slots.Length >= MinYears)
            {
                // The last one is no earlier than one that this spring has had.
                var seenFrost = SpringFrost.SoFar(min, SpringFreeze.HardFreezeF, year) ?? LocalDate.MinIsoValue;
                yield return new(SeasonEventKind.LastSpringFrost, LocalDate.Max(seenFrost, On(year, MiddleShare)),
                    Basis.Climatology, slots.Length, LocalDate.Max(seenFrost, On(year, EarlyShare)),
                    LocalDate.Max(seenFrost, On(year, LateShare)));
            }
        }

        // By month and day, so that leap years shift nothing.
        LocalDate On(int year, double share)
        {
            var slot = (int)Math.Round(Quantile.Of(slots, share));
            return (HeatTable.DateOf(year, slot) ?? HeatTable.DateOf(year, slot - 1))!.Value;
        }
    }
}
