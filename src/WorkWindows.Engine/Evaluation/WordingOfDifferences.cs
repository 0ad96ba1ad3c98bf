using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>The words of what changed.</summary>
public static partial class Wording
{
    /// <summary>The days that changed, a sentence for each run.</summary>
    public static string Of(StateChange change)
    {
        var days = change.First == change.Last ? Of(change.First) : $"{Of(change.First)} to {Of(change.Last)}";
        return $"{days}: was {Of(change.Before)}, now {Of(change.After)}";
    }

    /// <summary>Why days changed, a sentence for each rule, reading, event and thing.</summary>
    /// <param name="difference">What changed.</param>
    /// <param name="titleOf">A rule's title by its id.</param>
    public static IEnumerable<string> Causes(DecisionDifference difference, Func<string, string> titleOf) =>
    [
        .. difference.Readings.Select(Of),
        .. difference.Events.Select(Of),
        .. difference.Others,
        .. difference.Rules.Select(change => $"{titleOf(change.RuleId)}: {Said(change)} ({Of(change.Day)})").Distinct(),
    ];

    private static string Said(RuleChange change) => (change.Before, change.After) switch
    {
        (_, Truth.Holds) => "now holds",
        (_, Truth.Unknown) => "can no longer be known",
        (_, Truth.Fails) => "no longer holds",
    };

    /// <summary>What a reading was and is.</summary>
    public static string Of(ReadingChange change) =>
        $"{Of(change.Kind)} on {Of(change.Day)}: was {Of(change.Kind, change.Before)}, now {Of(change.Kind, change.After)}";

    /// <summary>A value in its usual unit and how it is known.</summary>
    public static string Of(SignalKind kind, Reading reading)
    {
        if (reading.Value is not { } value)
            return NotKnown;
        var words = RuleUnits.Usual(kind) is { } unit
            ? Number(unit.FromSignalUnit(value), unit)
            : value > 0 ? AlertInForce : NoAlert;
        return $"{words} ({Of(reading.Basis)})";
    }

    private static string Of(EventChange change) =>
        $"{Of(change.Kind)} {change.Year}: was {Of(change.Before)}, now {Of(change.After)}";

    private static string Of(SeasonEvent? e) => e is null ? NotKnown : $"{Of(e.Date)} ({OfEvent(e.Basis)})";
}
