using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Records;

/// <summary>Five quantiles of a temperature over the past years that may follow, °F. Type 8.</summary>
public sealed record Spread(double P10, double P25, double P50, double P75, double P90)
{
    /// <returns>Null when fewer than fifteen values are known.</returns>
    public static Spread? Of(IEnumerable<double> valuesF)
    {
        double[] known = [.. valuesF.Where(value => !double.IsNaN(value))];
        return known.Length < Ensemble.MinYears ? null : new(At(0.1), At(0.25), At(0.5), At(0.75), At(0.9));

        double At(double share) => Math.Round(Quantile.Of(known, share), 1);
    }
}

/// <summary>A day of the fan.</summary>
/// <param name="Date">The day.</param>
/// <param name="MinF">Its minimum as observed or forecast, °F; null when neither.</param>
/// <param name="MaxF">Its maximum.</param>
/// <param name="IsForecast">Minimum or maximum are forecast.</param>
/// <param name="Min">The minimum in past years that continue what is known; null while it is known.</param>
/// <param name="Max">The maximum in them.</param>
public sealed record FanDay(LocalDate Date, double? MinF, double? MaxF, bool IsForecast, Spread? Min, Spread? Max);

/// <summary>The last days, the forecast, and how past years would go on after it.</summary>
/// <param name="Days">The days.</param>
/// <param name="PastYears">The past years; none when they are too few.</param>
/// <param name="UsableYears">How many there are, few or not.</param>
public sealed record FanChart(IReadOnlyList<FanDay> Days, IReadOnlyList<int> PastYears, int UsableYears)
{
    private const int DaysBack = 14;
    private const int DaysAfter = 60;

    /// <summary>No forecast of days reaches further.</summary>
    private const int LongestForecastDays = 16;

    /// <summary>The days whose signals are needed.</summary>
    public static DaySpan DaysAround(LocalDate today) =>
        DaySpan.Between(today.PlusDays(-DaysBack), today.PlusDays(LongestForecastDays + DaysAfter));

    /// <param name="known">The signals over <see cref="DaysAround"/>.</param>
    /// <param name="ensemble">What may follow them.</param>
    /// <param name="today">The day of asking.</param>
    /// <returns>Null when nothing is known and nothing can be told.</returns>
    public static FanChart? Of(SignalSet known, Ensemble ensemble, LocalDate today)
    {
        var (min, max) = (known[SignalKind.MinTemperatureC], known[SignalKind.MaxTemperatureC]);
        if (min is null || max is null)
            return null;
        var span = known.Span;
        var last = Enumerable.Range(0, span.Count)
            .LastOrDefault(day => min.Bases[day] != Basis.Missing && max.Bases[day] != Basis.Missing, -1);
        var first = Math.Max(last + 1, span.IndexOf(today));
        var count = ensemble.Years.IsEmpty ? first : Math.Min(first + DaysAfter, span.Count);
        FanDay[] days =
        [
            .. Enumerable.Range(0, count).Select(day => new FanDay(
                span[day], ValueF(min, day), ValueF(max, day),
                min.Bases[day] == Basis.Forecast || max.Bases[day] == Basis.Forecast,
                day < first ? null : Following(ensemble, SignalKind.MinTemperatureC, day),
                day < first ? null : Following(ensemble, SignalKind.MaxTemperatureC, day))),
        ];
        return Array.TrueForAll(days, day => day is { MinF: null, MaxF: null, Min: null })
            ? null
            : new(days, ensemble.Years, ensemble.UsableYears);
    }

    /// <summary>The coldest night of today and the days that are forecast; null without a forecast.</summary>
    public FanDay? ColdestToCome(LocalDate today) =>
        Days.Where(day => day.Date >= today && day.IsForecast && day.MinF is not null).MinBy(day => day.MinF);

    private static double? ValueF(Signal signal, int day) =>
        signal.Bases[day] == Basis.Missing ? null : Math.Round(RuleUnit.DegF.FromSignalUnit(signal.Values[day]), 1);

    private static Spread? Following(Ensemble ensemble, SignalKind kind, int day) =>
        Spread.Of(ensemble.Members.Select(member =>
            member[kind] is { } signal ? RuleUnit.DegF.FromSignalUnit(signal.Values[day]) : double.NaN));
}
