using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Records;

namespace WorkWindows.Service.Windows;

/// <summary>The temperatures of a month.</summary>
/// <param name="Month">Its name and year.</param>
/// <param name="LowestMinF">°F, or null without any reading.</param>
/// <param name="HighestMaxF">°F, or null without any reading.</param>
/// <param name="DaysWithout">Days that lack the minimum or the maximum.</param>
public sealed record MonthTemperatures(string Month, double? LowestMinF, double? HighestMaxF, int DaysWithout);

/// <summary>Daily temperatures as a chart's data and as a table.</summary>
/// <param name="Spec">The chart.</param>
/// <param name="Months">The same by month.</param>
public sealed record TemperatureChart(ChartSpec Spec, IReadOnlyList<MonthTemperatures> Months)
{
    private static readonly LocalDatePattern MonthAndYear = LocalDatePattern.CreateWithInvariantCulture("MMM uuuu");

    /// <returns>Null when no temperature is known on any of the days.</returns>
    public static TemperatureChart? Of(TaskEvaluation evaluation, DaySpan days, LocalDate today)
    {
        var signals = evaluation.Signals;
        var min = Read(signals, SignalKind.MinTemperatureC, days);
        var max = Read(signals, SignalKind.MaxTemperatureC, days);
        if (!min.Concat(max).Any(reading => reading.ValueF is not null))
            return null;
        var spec = new ChartSpec(
            [.. Enumerable.Range(0, days.Count).Select(day => ChartSpec.NumberOf(days[day]))],
            [
                new("minimum", "--cold", In(min, Basis.Observed, Basis.Interpolated)),
                new("maximum", "--warm", In(max, Basis.Observed, Basis.Interpolated)),
                new("minimum, forecast", "--cold", In(min, Basis.Forecast)) { IsDashed = true },
                new("maximum, forecast", "--warm", In(max, Basis.Forecast)) { IsDashed = true },
            ])
        {
            IsStrip = true,
            Limits = [.. TemperatureLimits.Of(evaluation.Packs, [evaluation.Facts])
                .Select(limit => new ChartLimit(limit.ValueF, limit.Label))],
            Marks =
            [
                .. signals.Events.Where(seen => seen.Kind == SeasonEventKind.LeafOut && days.Contains(seen.Date))
                    .Select(seen => new ChartMark(ChartSpec.NumberOf(seen.Date), "--open")),
                .. days.Contains(today)
                    ? [new ChartMark(ChartSpec.NumberOf(today), "--ink")]
                    : Array.Empty<ChartMark>(),
            ],
        };
        return new(spec, [.. Enumerable.Range(0, days.Count).GroupBy(day => MonthAndYear.Format(days[day]))
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

    private static List<double?> In(IEnumerable<Reading> readings, params Basis[] bases) =>
        [.. readings.Select(reading => bases.Contains(reading.Basis) ? reading.ValueF : null)];

    private readonly record struct Reading(double? ValueF, Basis Basis);
}
