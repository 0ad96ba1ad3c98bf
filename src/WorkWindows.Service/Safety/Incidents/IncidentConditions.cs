using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>What the day of an incident was like, kept with it.</summary>
/// <param name="Day">The day's state, and each rule that spoke with what it found and its source.</param>
/// <param name="Signals">The day's weather and light, as far as they were known.</param>
/// <param name="ForecastIssuedAt">When the forecast that it rests on was issued, or null for none.</param>
/// <param name="Packs">Key, version and hash of the rule packs.</param>
/// <param name="KnownAt">When this was looked up: values that came later are not in it.</param>
public sealed record IncidentConditions(
    DayView Day, IReadOnlyList<SignalView> Signals, Instant? ForecastIssuedAt, IReadOnlyList<string> Packs,
    Instant KnownAt)
{
    /// <param name="evaluation">Covers the day.</param>
    /// <param name="day">The day.</param>
    /// <param name="now">The time of asking.</param>
    public static IncidentConditions Of(TaskEvaluation evaluation, LocalDate day, Instant now) => new(
        DayView.Of(Explanation.Of(evaluation, day)),
        [
            .. Enum.GetValues<SignalKind>().Select(kind => evaluation.Signals[kind]).OfType<Signal>()
                .Select(signal => SignalView.Of(signal, signal.Span.IndexOf(day))),
        ],
        evaluation.Signals.ForecastIssued,
        [.. evaluation.Packs.Select(pack => $"{pack.Id} {pack.Version} {pack.Hash}")],
        now);
}

/// <param name="Signal">What it is; the name carries the unit.</param>
/// <param name="Value">The value; null where it is not known.</param>
/// <param name="Basis">How it is known.</param>
public sealed record SignalView(SignalKind Signal, double? Value, Basis Basis)
{
    internal static SignalView Of(Signal signal, int day) => new(
        signal.Kind, double.IsNaN(signal.Values[day]) ? null : signal.Values[day], signal.Bases[day]);
}
