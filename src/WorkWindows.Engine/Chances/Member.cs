using System.Runtime.InteropServices;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>A known season, continued by the weather of one past year.</summary>
internal sealed class Member
{
    private readonly KnownSeason season;
    private readonly int[] sources;
    private readonly Dictionary<DailyElement, Departure> departures;

    private Member(KnownSeason season, int year)
    {
        this.season = season;
        var last = season.LastIndex;
        sources = Sources(season.Days, year - season.Last.Year);
        departures = Enum.GetValues<DailyElement>().ToDictionary(element => element, element =>
            last >= 0 && season.Past[element] is { Usual: { } usual } column
                ? Departure.Of(season[element][last], column[sources[last]], usual.KeptPerDay(season.Last))
                : Departure.None);
    }

    /// <summary>The signals of a season, and the events of spring, when the weather of a year follows.</summary>
    /// <param name="season">What is known.</param>
    /// <param name="year">The year that follows its last day.</param>
    /// <param name="latitudeDeg">North positive.</param>
    public static SignalSet Of(KnownSeason season, int year, double latitudeDeg)
    {
        var member = new Member(season, year);
        var weather = Enum.GetValues<DailyElement>()
            .ToDictionary(element => element, element => member.Filled(element, season[element], season.Past[element]));
        KeepOrder(weather[DailyElement.MinTemperatureC], weather[DailyElement.MaxTemperatureC]);
        var known = season.Signals;
        var signals = DerivedSignals.OfWeather(
            known.Span, (element, span) => member.Measured(element, weather[element], span));
        return known with
        {
            Signals = known.Signals.SetItems(signals.Select(signal => KeyValuePair.Create(signal.Kind, signal))),
            Events = [.. member.Events(weather, latitudeDeg).OrderBy(e => e.Date)],
        };
    }

    /// <summary>
    /// The same calendar day so many years later, as a day number; in a common year 28 February stands in for the 29th.
    /// </summary>
    private static int[] Sources(DaySpan days, int years)
    {
        var numbers = new int[days.Count];
        for (var day = 0; day < numbers.Length;)
        {
            // A month at a time: the arithmetic of dates is slow.
            var month = days[day];
            var source = new LocalDate(month.Year + years, month.Month, 1);
            var first = PastColumn.NumberOf(source);
            var last = first + source.Calendar.GetDaysInMonth(source.Year, source.Month) - 1;
            var length = month.Calendar.GetDaysInMonth(month.Year, month.Month);
            for (var date = month.Day; date <= length && day < numbers.Length; date++)
                numbers[day++] = Math.Min(first + date - 1, last);
        }
        return numbers;
    }

    /// <summary>What is known, with the past year's values on the other days.</summary>
    private double[] Filled(DailyElement element, double[] known, PastColumn? past)
    {
        var values = (double[])known.Clone();
        if (past is null)
            return values;
        var (departureC, keptPerDay) = departures[element];
        for (var day = 0; day < values.Length; day++)
        {
            if (day > season.LastIndex)
                departureC *= keptPerDay;
            if (double.IsNaN(values[day]))
                values[day] = past.Continued(sources[day], day > season.LastIndex ? departureC : 0);
        }
        return values;
    }

    /// <summary>
    /// A minimum and a maximum are moved by different departures, so that they may cross: the maximum gives way.
    /// </summary>
    private static void KeepOrder(double[] minC, double[] maxC)
    {
        for (var day = 0; day < minC.Length; day++)
            maxC[day] = maxC[day] < minC[day] ? minC[day] : maxC[day];
    }

    private Signal Measured(DailyElement element, double[] values, DaySpan span)
    {
        var first = season.Days.IndexOf(span.First);
        var kind = SignalSetBuilder.SignalOf(element);
        var slice = values.AsSpan(first, span.Count).ToArray();
        var known = season[element].AsSpan(first, span.Count);
        var told = span == season.Signals.Span ? season.Signals[kind] : null;
        var bases = new Basis[span.Count];
        for (var day = 0; day < bases.Length; day++)
        {
            bases[day] = double.IsNaN(slice[day]) ? Basis.Missing
                : double.IsNaN(known[day]) ? Basis.Climatology
                : told?.Bases[day] is { } basis and not Basis.Missing ? basis
                : Basis.Observed;
        }
        return new(kind, span, ImmutableCollectionsMarshal.AsImmutableArray(slice),
            ImmutableCollectionsMarshal.AsImmutableArray(bases));
    }

    private IEnumerable<SeasonEvent> Events(Dictionary<DailyElement, double[]> weather, double latitudeDeg)
    {
        var (heatMinC, heatMaxC) = (
            Filled(DailyElement.MinTemperatureC, season.HeatMinC, season.Past.HeatMinC),
            Filled(DailyElement.MaxTemperatureC, season.HeatMaxC, season.Past.HeatMaxC));
        KeepOrder(heatMinC, heatMaxC);
        var leafOut = new ThermalDates(Series(heatMinC, heatMaxC), null, LeafOut.Default.FromMarch);
        var spring = Series(weather[DailyElement.MinTemperatureC], weather[DailyElement.MaxTemperatureC]);
        var (first, last) = (season.Signals.Span.First.Year, season.Signals.Span.Last.Year);
        return Enumerable.Range(first, last - first + 1).Select(year => leafOut[year]).OfType<SeasonEvent>()
            .Concat(SpringEvents.Of(first, last, spring, null, latitudeDeg));
    }

    private DailySeries Series(double[] minC, double[] maxC)
    {
        return DailySeries.Empty
            .With(DailyElement.MinTemperatureC, Column(minC)).With(DailyElement.MaxTemperatureC, Column(maxC));

        DailyColumn Column(double[] values) =>
            new(season.Days.First, ImmutableCollectionsMarshal.AsImmutableArray(values), 0, ReadsUsUnits: false);
    }
}
