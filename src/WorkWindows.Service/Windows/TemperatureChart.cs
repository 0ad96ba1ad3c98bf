using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Windows;

/// <summary>The temperatures of a month.</summary>
/// <param name="Month">Its name and year.</param>
/// <param name="LowestMinF">°F, or null without any reading.</param>
/// <param name="HighestMaxF">°F, or null without any reading.</param>
/// <param name="DaysWithout">Days that lack the minimum or the maximum.</param>
public sealed record MonthTemperatures(string Month, double? LowestMinF, double? HighestMaxF, int DaysWithout);

/// <summary>Daily temperatures as a chart's data and as a table.</summary>
/// <param name="Json">What the chart's script reads.</param>
/// <param name="Months">The same by month.</param>
public sealed record TemperatureChart(string Json, IReadOnlyList<MonthTemperatures> Months)
{
    private static readonly LocalDatePattern MonthAndYear = LocalDatePattern.CreateWithInvariantCulture("MMM uuuu");

    /// <returns>Null when no temperature is known on any of the days.</returns>
    public static TemperatureChart? Of(SignalSet signals, DaySpan days, LocalDate today)
    {
        var min = Read(signals, SignalKind.MinTemperatureC, days);
        var max = Read(signals, SignalKind.MaxTemperatureC, days);
        if (!min.Concat(max).Any(reading => reading.ValueF is not null))
            return null;
        var json = JsonSerializer.Serialize(new
        {
            days = Enumerable.Range(0, days.Count).Select(day => Seconds(days[day])),
            minObserved = min.Select(reading => reading.In(Basis.Observed, Basis.Interpolated)),
            maxObserved = max.Select(reading => reading.In(Basis.Observed, Basis.Interpolated)),
            minForecast = min.Select(reading => reading.In(Basis.Forecast)),
            maxForecast = max.Select(reading => reading.In(Basis.Forecast)),
            today = days.Contains(today) ? Seconds(today) : (long?)null,
            leafOuts = signals.Events.Where(seen => seen.Kind == SeasonEventKind.LeafOut && days.Contains(seen.Date))
                .Select(seen => new { day = Seconds(seen.Date), basis = Wording.OfEvent(seen.Basis) }),
        });
        return new(json, [.. Enumerable.Range(0, days.Count).GroupBy(day => MonthAndYear.Format(days[day]))
            .Select(month => new MonthTemperatures(
                month.Key,
                month.Min(day => min[day].ValueF),
                month.Max(day => max[day].ValueF),
                month.Count(day => min[day].ValueF is null || max[day].ValueF is null)))]);
    }

    private static Reading[] Read(SignalSet signals, SignalKind kind, DaySpan days) =>
    [
        .. Enumerable.Range(signals.Span.IndexOf(days.First), days.Count).Select(day =>
            signals[kind] is { } signal && signal.Bases[day] != Basis.Missing
                ? new Reading(Math.Round(RuleUnit.DegF.FromSignalUnit(signal.Values[day]), 1), signal.Bases[day])
                : new Reading(null, Basis.Missing)),
    ];

    private static long Seconds(LocalDate day) => day.AtMidnight().InUtc().ToInstant().ToUnixTimeSeconds();

    private readonly record struct Reading(double? ValueF, Basis Basis)
    {
        public double? In(params ReadOnlySpan<Basis> bases) => bases.Contains(Basis) ? ValueF : null;
    }
}
