using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>What has been observed and forecast of a season, laid out so that past years can continue it.</summary>
internal sealed class KnownSeason
{
    private const int SummerMonth = 6, SummerDay = 30;

    private readonly Dictionary<DailyElement, double[]> values = [];

    private readonly LocalDate? lastObserved;

    private KnownSeason(
        PastWeather past, SignalSet signals, Forecast? forecast, LocalDate? lastObserved, DaySpan days)
    {
        (Past, Signals, Days, this.lastObserved) = (past, signals, days, lastObserved);
        foreach (var element in Enum.GetValues<DailyElement>())
            values[element] = Laid(forecast?.Days[element], past.Observed[element]?.AsRead(element));
        HeatMinC = Laid(forecast?.Days[DailyElement.MinTemperatureC], past.Heat[DailyElement.MinTemperatureC]);
        HeatMaxC = Laid(forecast?.Days[DailyElement.MaxTemperatureC], past.Heat[DailyElement.MaxTemperatureC]);
        var (min, max) = (values[DailyElement.MinTemperatureC], values[DailyElement.MaxTemperatureC]);
        LastIndex = Enumerable.Range(0, days.Count).LastOrDefault(day => !double.IsNaN(min[day] + max[day]), -1);
    }

    public PastWeather Past { get; }

    /// <summary>The signals that are known.</summary>
    public SignalSet Signals { get; }

    /// <summary>
    /// From the start of the frost year, or of the calendar year, before the signals' span to the June after it, so
    /// that frozen ground and the events of spring can be worked out.
    /// </summary>
    public DaySpan Days { get; }

    /// <summary>The last of the days with a minimum and a maximum; -1 when the record has ended before them.</summary>
    public int LastIndex { get; }

    /// <summary>The day that past years follow.</summary>
    public LocalDate Last => Days[LastIndex];

    /// <summary>Minima and maxima on the days that they belong to, °C, NaN where not known.</summary>
    public double[] HeatMinC { get; }

    /// <inheritdoc cref="HeatMinC"/>
    public double[] HeatMaxC { get; }

    /// <param name="past">The record.</param>
    /// <param name="signals">What is known besides the weather; of the weather, what the members do not change.</param>
    /// <param name="forecast">Used on days that were not observed; null when there is none.</param>
    /// <param name="lastObserved">Later days count as not observed; null for all that the record has.</param>
    public static KnownSeason Of(PastWeather past, SignalSet signals, Forecast? forecast, LocalDate? lastObserved)
    {
        var span = signals.Span;
        var first = LocalDate.Min(DerivedSignals.FrostYearOf(span.First), new(span.First.Year, 1, 1));
        var last = LocalDate.Max(span.Last, new(span.Last.Year, SummerMonth, SummerDay));
        return new(past, signals, forecast, lastObserved, DaySpan.Between(first, last));
    }

    /// <summary>The values of an element on the days, in its unit, NaN where not known.</summary>
    public double[] this[DailyElement element] => values[element];

    private double[] Laid(DailyColumn? forecast, DailyColumn? observed)
    {
        var laid = new double[Days.Count];
        Array.Fill(laid, double.NaN);
        forecast?.CopyTo(Days, laid);
        if (observed is null)
            return laid;
        var read = new double[Days.Count];
        observed.CopyTo(Days, read);
        var count = lastObserved is { } last ? Math.Clamp(Days.IndexOf(last) + 1, 0, Days.Count) : Days.Count;
        for (var day = 0; day < count; day++)
            laid[day] = double.IsNaN(read[day]) ? laid[day] : read[day];
        return laid;
    }
}
