using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.HeatAndCold;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Safety;

/// <summary>What is known of a day's weather and light; null where it is not known.</summary>
public sealed record DayFigures
{
    /// <summary>Nothing is known.</summary>
    public static DayFigures Unknown { get; } = new();

    private static readonly SignalKind[] Shown =
    [
        SignalKind.MinTemperatureC, SignalKind.MaxTemperatureC, SignalKind.HeatIndexC, SignalKind.WindChillC,
        SignalKind.WindMps, SignalKind.GustMps, SignalKind.SnowDepthCm, SignalKind.ThunderChancePercent,
        SignalKind.DarkShiftMinutes,
    ];

    /// <summary>Below it there is no heat index: its regression does not hold. Source: docs/rules/heat-and-cold.md.</summary>
    private const double LeastHeatIndexF = 80;

    public double? MinTempF { get; init; }
    public double? MaxTempF { get; init; }
    public double? HeatIndexF { get; init; }
    public double? WindChillF { get; init; }
    public double? WindMph { get; init; }
    public double? GustMph { get; init; }

    /// <summary>Minutes of the shift before sunrise or after sunset.</summary>
    public double? DarkMinutes { get; init; }

    public double? SnowDepthIn { get; init; }

    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the signals' span.</exception>
    public static DayFigures Of(SignalSet signals, LocalDate day)
    {
        return new()
        {
            MinTempF = Value(SignalKind.MinTemperatureC),
            MaxTempF = Value(SignalKind.MaxTemperatureC),
            HeatIndexF = Value(SignalKind.HeatIndexC),
            WindChillF = Value(SignalKind.WindChillC),
            WindMph = Value(SignalKind.WindMps),
            GustMph = Value(SignalKind.GustMps),
            DarkMinutes = Value(SignalKind.DarkShiftMinutes),
            SnowDepthIn = Value(SignalKind.SnowDepthCm),
        };

        double? Value(SignalKind kind) => DayFigures.Value(signals, kind, day) is { } found
            ? RuleUnits.Usual(kind)!.Value.FromSignalUnit(found.Value)
            : null;
    }

    /// <summary>The figures as people read them, in their usual order, each with its unit and how it is known.</summary>
    /// <returns>
    /// A line a figure, such as 'gusts: 18 mph (forecast)'; one that is missing is said to be not known. A heat index
    /// below 80 °F and a wind chill above 50 °F are left out: the weather service defines none there.
    /// </returns>
    /// <param name="signals">Cover the day.</param>
    /// <param name="day">The day.</param>
    /// <param name="scale">The scale of temperatures.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the signals' span.</exception>
    public static ImmutableArray<string> Lines(
        SignalSet signals, LocalDate day, TemperatureScale scale = TemperatureScale.Fahrenheit) =>
    [
        .. Shown.Select(kind => (Kind: kind, Found: Value(signals, kind, day)))
            .Where(figure => figure.Found is not { } found || IsDefined(figure.Kind, found.Value))
            .Select(figure => Line(figure.Kind, figure.Found, scale)),
    ];

    /// <summary>To a tenth, as it would be shown.</summary>
    private static bool IsDefined(SignalKind kind, double value) => kind switch
    {
        SignalKind.HeatIndexC => Math.Round(RuleUnit.DegF.FromSignalUnit(value), 1) >= LeastHeatIndexF,
        SignalKind.WindChillC => Math.Round(RuleUnit.DegF.FromSignalUnit(value), 1) <= WindChill.MaxTempF,
        _ => true,
    };

    private static string Line(SignalKind kind, (double Value, Basis Basis)? figure, TemperatureScale scale)
    {
        var unit = RuleUnits.Usual(kind)!.Value.In(scale);
        return figure is { } found
            ? FormattableString.Invariant($"{Wording.Of(kind)}: {unit.FromSignalUnit(found.Value):0.#} ")
                + $"{unit.Symbol()} ({Wording.Of(found.Basis)})"
            : $"{Wording.Of(kind)}: not known";
    }

    private static (double Value, Basis Basis)? Value(SignalSet signals, SignalKind kind, LocalDate day)
    {
        if (!signals.Span.Contains(day))
            throw new ArgumentOutOfRangeException(nameof(day), day, $"The signals cover {signals.Span}.");
        var index = signals.Span.IndexOf(day);
        return signals[kind] is { } signal && signal.Bases[index] != Basis.Missing
            ? (signal.Values[index], signal.Bases[index])
            : null;
    }
}
