using System.Globalization;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>A finding in words, part by part.</summary>
/// <param name="What">What was looked at.</param>
/// <param name="Value">What it was.</param>
/// <param name="Limit">What would make the condition hold.</param>
/// <param name="Margin">How far off it is.</param>
/// <param name="Basis">How the value is known.</param>
public sealed record FindingWords(string What, string Value, string Limit, string Margin, string Basis);

/// <summary>The words of findings.</summary>
public static partial class Wording
{
    // Half of the last digit that is shown.
    private const double AtTheLimit = 0.05;

    internal const string NotKnown = "not known";
    internal const string NoAlert = "none";
    internal const string AlertInForce = "in force";

    /// <summary>A finding in a line: what, value, threshold, margin, basis.</summary>
    public static string Of(Finding finding)
    {
        var (what, value, limit, margin, basis) = Parts(finding);
        return finding switch
        {
            CalendarFinding => $"{limit}; {margin}",
            OnsetFinding or LatchFinding => $"{what}: {value}; limit: {limit}",
            SignalFinding { Value: null } => $"{what} {value}; limit: {limit}{SoFar(finding)}",
            _ => $"{what} {value} ({basis}); limit: {limit}{SoFar(finding)}",
        };
    }

    /// <summary>What would make a finding hold: the limit of a signal, or the days of a range.</summary>
    public static string LimitOf(Finding finding) => finding switch
    {
        CalendarFinding calendar => Range(calendar),
        _ => $"{Parts(finding).What} {Parts(finding).Limit}",
    };

    /// <summary>A finding part by part, for a table.</summary>
    public static FindingWords Parts(Finding finding) => finding switch
    {
        SignalFinding signal => new(
            Of(signal.Compare.Signal), Number(signal.Value, signal.Compare.Threshold.Unit),
            $"{Limit(signal.Compare)}{InARow(signal)}", MarginOf(signal), Of(signal.Basis)),
        CalendarFinding calendar => new(
            "date", Of(calendar.Day), Range(calendar), MarginOf(calendar), OfEvent(calendar.Basis)),
        SumFinding sum => new(
            Subject(sum), SumOf(sum), Limit(sum.Sum.Relation, sum.Sum.Threshold),
            Margin(sum.Margin, sum.Sum.Threshold.Unit), sum.MissingDays > 0 ? Of(Basis.Missing) : Of(sum.Basis)),
        LatchFinding latch => new(
            Of(latch.Latched.Starts.Signal), Number(latch.Value, latch.Latched.Starts.Threshold.Unit),
            $"from {Limit(latch.Latched.Starts)} until {Limit(latch.Latched.Ends)}",
            latch.Since is { } since ? $"so since {Of(since)}" : NotKnown, Of(latch.Basis)),
        OnsetFinding onset => new(
            "first time", onset.CameOn is { } came ? $"came on {Of(came)}" : onset.Truth == Truth.Unknown ? NotKnown : "not yet",
            $"between {Of(onset.From)} and {Of(onset.To)}", $"lasts until {Of(onset.To)}", Of(onset.Basis)),
        AlertFinding alert => new(
            Of(alert.Alert), alert.Truth switch
            {
                Truth.Holds => AlertInForce,
                Truth.Fails => NoAlert,
                Truth.Unknown => NotKnown,
            },
            AlertInForce, "", Of(alert.Basis)),
        _ => throw new ArgumentException($"{finding.GetType().Name} has no words."),
    };

    /// <summary>A limit in words, as in 'below 20 °F'.</summary>
    public static string Limit(Compare compare) => Limit(compare.Relation, compare.Threshold);

    private static string Limit(Relation relation, Threshold threshold) =>
        $"{Of(relation)} {Number(threshold.Value, threshold.Unit)}";

    private static string Subject(Finding finding) => finding switch
    {
        SignalFinding signal => Of(signal.Compare.Signal),
        AlertFinding alert => Of(alert.Alert),
        LatchFinding latch => Of(latch.Latched.Starts.Signal),
        SumFinding { Sum: TotalOver total } => $"{Of(total.Signal)} of {Days(total.Days)}",
        SumFinding { Sum: HeatSince heat, Since: var since } =>
            $"heat above {Number(heat.Heat.Base.Value, heat.Heat.Base.Unit)} since {Of(since)} ({Of(heat.Heat.Method)})",
        OnsetFinding onset => $"readings since {Of(onset.From)}",
        CalendarFinding { Event: { } e } => Of(e),
        _ => "the date",
    };

    private static string SumOf(SumFinding sum)
    {
        var known = Number(sum.Known, sum.Sum.Threshold.Unit);
        return sum.MissingDays == 0 ? known : $"at least {known}, {Days(sum.MissingDays)} missing";
    }

    private static string InARow(SignalFinding finding) =>
        finding.DaysInARow > 1 ? $" for {finding.DaysInARow} days in a row" : "";

    private static string SoFar(Finding finding) =>
        finding is SignalFinding { DaysInARow: > 1 } run ? $" (so far {run.RunLength})" : "";

    private static string MarginOf(SignalFinding finding)
    {
        var margin = finding.Margin is { } value ? Margin(value, finding.Compare.Threshold.Unit) : NotKnown;
        return finding.DaysInARow > 1 ? $"{margin}; {Days(finding.RunLength)} in a row so far" : margin;
    }

    private static string Margin(double margin, RuleUnit unit) => margin switch
    {
        > -AtTheLimit and < AtTheLimit => "at the limit",
        > 0 => $"past the limit by {Number(margin, unit)}",
        _ => $"short of the limit by {Number(-margin, unit)}",
    };

    private static string MarginOf(CalendarFinding finding) => finding.Truth switch
    {
        Truth.Unknown => "not known yet where it ends",
        _ when finding.MarginDays < 0 => $"begins in {Days(-finding.MarginDays)}",
        _ => $"{Days(finding.MarginDays)} left",
    };

    private static string Range(CalendarFinding finding)
    {
        var range = finding.From == finding.To ? Of(finding.From) : $"{Of(finding.From)} to {Of(finding.To)}";
        return finding.Basis == Basis.Calendar ? range : $"{range} ({OfEvent(finding.Basis)})";
    }

    /// <summary>A value with its unit; null is not known.</summary>
    internal static string Number(double? value, RuleUnit unit) => value is { } known
        ? $"{known.ToString("0.#", CultureInfo.InvariantCulture)} {unit.Symbol()}"
        : NotKnown;

    private static string Days(int count) => count == 1 ? "1 day" : $"{count} days";
}
