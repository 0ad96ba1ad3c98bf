using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>What was known of the day of an incident at its hour, kept with it.</summary>
/// <param name="Day">The day's state, and each rule that spoke with what it found and its source.</param>
/// <param name="Signals">The day's weather and light, as far as they were known.</param>
/// <param name="ForecastIssuedAt">When the forecast that it rests on was issued, or null for none.</param>
/// <param name="Packs">Key, version and hash of the rule packs.</param>
/// <param name="KnownAt">The hour of the incident: values that came later are not in it.</param>
/// <param name="Light">The light at that hour.</param>
/// <param name="ByTheHour">What is known of that hour alone, and what only of the day.</param>
public sealed record IncidentConditions(
    DayView Day, IReadOnlyList<SignalView> Signals, Instant? ForecastIssuedAt, IReadOnlyList<string> Packs,
    Instant KnownAt, string Light, string ByTheHour)
{
    private const string OnlyLight =
        "The light is that of the hour. Temperature, wind, rain and alerts are those of the day: not known by the hour.";

    /// <param name="task">Evaluated over the day, as it was known at the hour.</param>
    /// <param name="at">When it happened.</param>
    public static IncidentConditions Of(EvaluatedTask task, Instant at)
    {
        var evaluation = task.Evaluation;
        var day = at.InZone(task.Task.Zone).Date;
        return new(
            DayView.Of(Explanation.Of(evaluation, day)),
            [
                .. Enum.GetValues<SignalKind>().Select(kind => evaluation.Signals[kind]).OfType<Signal>()
                    .Select(signal => SignalView.Of(signal, signal.Span.IndexOf(day))),
            ],
            evaluation.Signals.ForecastIssued,
            [.. evaluation.Packs.Select(pack => $"{pack.Id} {pack.Version} {pack.Hash}")],
            at, LightAt(evaluation.Facts.Place, at.InZone(task.Task.Zone)), OnlyLight);
    }

    private static string LightAt(Place? place, ZonedDateTime at)
    {
        if (place is not { } where)
            return "Not known: the place has no position.";
        var sun = SunTimes.On(at.Date, at.Zone, where.LatitudeDeg, where.LongitudeDeg);
        if (sun is not { CivilDawn: { } dawn, Sunrise: { } rise, Sunset: { } set, CivilDusk: { } dusk })
            return "Not known: the sun does not both rise and set on this day.";
        var now = at.ToInstant();
        var light = now >= rise && now <= set ? "Daylight"
            : now >= dawn && now <= dusk ? "Twilight"
            : "Dark";
        return $"{light}: sunrise {DayWords.At(rise, at.Zone)}, sunset {DayWords.At(set, at.Zone)}.";
    }
}

/// <param name="Signal">What it is; the name carries the unit.</param>
/// <param name="Value">The value; null where it is not known.</param>
/// <param name="Basis">How it is known.</param>
public sealed record SignalView(SignalKind Signal, double? Value, Basis Basis)
{
    internal static SignalView Of(Signal signal, int day) => new(
        signal.Kind, double.IsNaN(signal.Values[day]) ? null : signal.Values[day], signal.Bases[day]);
}
