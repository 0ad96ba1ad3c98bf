using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>What one rule says of one day.</summary>
/// <param name="Pack">The pack that the rule stands in.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Truth">Whether its condition holds; unknown also when its scope is in doubt.</param>
/// <param name="InventoryMissing">The rule asks for species and the parcel has no inventory.</param>
/// <param name="Findings">The comparisons and ranges of its condition, in the order of the file.</param>
public sealed record RuleVerdict(
    RulePack Pack, Rule Rule, Truth Truth, bool InventoryMissing, ImmutableArray<Finding> Findings)
{
    /// <summary>The rule did something to the day, or might have.</summary>
    public bool Spoke => Truth != Truth.Fails;

    /// <summary>The rule's source speaks of other years than the day's.</summary>
    public bool OutsideValidYears(LocalDate day) => day.Year < Rule.Valid.From || day.Year > Rule.Valid.To;
}

/// <summary>Why a day is as it is, read off an evaluation's own arrays.</summary>
/// <param name="Day">The day.</param>
/// <param name="State">Its state.</param>
/// <param name="Verdicts">Every rule that speaks of the task, in the order of the packs.</param>
public sealed record Explanation(LocalDate Day, DayState State, ImmutableArray<RuleVerdict> Verdicts)
{
    /// <summary>The rules that made the state: closing ones on a closed day, those in doubt on an unknown one.</summary>
    public IEnumerable<RuleVerdict> Deciding => State switch
    {
        DayState.Closed => Verdicts.Where(v => v is { Rule.Effect: Effect.Closes, Truth: Truth.Holds }),
        DayState.Unknown => Verdicts.Where(v => v is { Rule.Effect: Effect.Closes, Truth: Truth.Unknown }),
        DayState.Limited => Verdicts.Where(v => v is { Rule.Effect: Effect.Limits, Spoke: true }),
        DayState.Open => [],
    };

    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static Explanation Of(TaskEvaluation evaluation, LocalDate day)
    {
        var index = evaluation.IndexOf(day);
        return new(day, evaluation.StateAt(index),
        [
            .. evaluation.Rules.Select(rule => new RuleVerdict(rule.Pack, rule.Rule, rule.On(index),
                rule.Applies == Truth.Unknown, [.. Findings(rule.Rule.When, evaluation.Signals, index)])),
        ]);
    }

    private static IEnumerable<Finding> Findings(Condition condition, SignalSet signals, int day) => condition switch
    {
        AllOf all => all.Parts.SelectMany(part => Findings(part, signals, day)),
        AnyOf any => any.Parts.SelectMany(part => Findings(part, signals, day)),
        Not not => Findings(not.Part, signals, day),
        InRange inRange => [Of(inRange, signals, day)],
        Compare compare => [Of(compare, compare, 1, signals, day)],
        InARow row => [Of(row, row.Each, row.Days, signals, day)],
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition that can be explained."),
    };

    private static CalendarFinding Of(InRange inRange, SignalSet signals, int day)
    {
        var date = signals.Span[day];
        var (from, to, basis) = CalendarDays.Occurrence(inRange.Range, signals, date);
        var margin = date >= from ? Period.DaysBetween(date, to) : -Period.DaysBetween(date, from);
        return new(from, to, margin, ConditionDays.Of(inRange, signals)[day], basis);
    }

    private static SignalFinding Of(Condition whole, Compare each, int daysInARow, SignalSet signals, int day)
    {
        var signal = signals[each.Signal];
        var known = signal is not null && signal.Bases[day] != Basis.Missing;
        var held = ConditionDays.Of(each, signals);
        var run = 0;
        while (run <= day && held[day - run] == Truth.Holds)
            run++;
        return new(each, known ? each.Threshold.Unit.FromSignalUnit(signal!.Values[day]) : null, daysInARow, run,
            ConditionDays.Of(whole, signals)[day], known ? signal!.Bases[day] : Basis.Missing);
    }
}
