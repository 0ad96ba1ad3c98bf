using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>The state of every day of a span for one task, and the rules that made it so.</summary>
public sealed class TaskEvaluation
{
    private TaskEvaluation(
        ImmutableArray<RulePack> packs, SignalSet signals, TaskFacts facts, ImmutableArray<RuleDays> rules,
        DayBits closed, DayBits unknown, DayBits limited)
    {
        (Packs, Signals, Facts, Rules) = (packs, signals, facts, rules);
        (Closed, Unknown, Limited) = (closed, unknown, limited);
    }

    public ImmutableArray<RulePack> Packs { get; }

    public SignalSet Signals { get; }

    public TaskFacts Facts { get; }

    /// <summary>The rules that speak, or may speak, of the task, in the order of the packs.</summary>
    public ImmutableArray<RuleDays> Rules { get; }

    /// <summary>The days that a rule closes.</summary>
    public DayBits Closed { get; }

    /// <summary>The days that no rule is known to close, but that one might: an input is missing.</summary>
    public DayBits Unknown { get; }

    /// <summary>The workable days on which measures must be taken.</summary>
    public DayBits Limited { get; }

    /// <summary>The days that are open or limited.</summary>
    public DayBits Workable => ~(Closed | Unknown);

    public DaySpan Span => Signals.Span;

    /// <summary>The state of a day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the span.</exception>
    public DayState this[LocalDate date] => StateAt(IndexOf(date));

    /// <summary>The windows that touch the given days, cut off at their ends, ascending.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the span.</exception>
    public IEnumerable<Window> Windows(DaySpan days)
    {
        var offset = IndexOf(days.First);
        _ = IndexOf(days.Last);
        return Workable.Slice(offset, days.Count).Runs().Select(run => new Window(days[run.First], days[run.Last]));
    }

    /// <summary>The runs of equal state over the given days, ascending and without gaps.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the span.</exception>
    public IEnumerable<StateRun> Runs(DaySpan days)
    {
        var start = 0;
        for (var day = 1; day <= days.Count; day++)
        {
            if (day < days.Count && this[days[day]] == this[days[start]])
                continue;
            yield return new(this[days[start]], days[start], days[day - 1]);
            start = day;
        }
    }

    /// <summary>
    /// Closed beats unknown beats limited beats open. A closing rule whose input is missing makes the day unknown; a
    /// limiting rule whose input is missing counts as holding, so that its measure is taken. A day that a person has
    /// excepted from a rule is at best limited, so that the exception shows.
    /// </summary>
    internal static TaskEvaluation Of(
        ImmutableArray<RulePack> packs, SignalSet signals, TaskFacts facts, ImmutableArray<RuleDays> rules)
    {
        rules = Lifts.Apply(rules, facts, signals.Span);
        var length = signals.Span.Count;
        var (closed, unknown, limited) = (DayBits.None(length), DayBits.None(length), DayBits.None(length));
        foreach (var applied in rules)
        {
            var days = applied.Spoken;
            switch (applied.Rule.Effect)
            {
                case Effect.Closes when applied.Applies == Truth.Holds:
                    closed |= days.Holds;
                    unknown |= days.Unknown;
                    break;
                case Effect.Closes:
                    unknown |= ~days.Fails;
                    break;
                case Effect.Limits:
                    limited |= ~days.Fails;
                    break;
            }
        }
        foreach (var exception in facts.Overrides)
        {
            var days = Lifts.Days(exception, signals.Span);
            foreach (var applied in rules.Where(applied => applied.Rule.Id == exception.RuleId))
            {
                if (applied.Rule.Effect is Effect.Closes or Effect.Limits)
                    limited |= (days & applied.Lifted).Except(applied.Days.Fails);
            }
        }
        unknown = unknown.Except(closed);
        return new(packs, signals, facts, rules, closed, unknown, limited.Except(closed).Except(unknown));
    }

    internal DayState StateAt(int day) =>
        Closed[day] ? DayState.Closed
        : Unknown[day] ? DayState.Unknown
        : Limited[day] ? DayState.Limited
        : DayState.Open;

    /// <summary>The state that a day would have under other signals.</summary>
    /// <param name="day">Index in the span.</param>
    /// <param name="signals">The signals, over the same span.</param>
    /// <param name="changed">Whether what a condition says may be other than under the evaluation's own.</param>
    internal DayState StateAt(int day, SignalSet signals, Func<Condition, bool> changed)
    {
        var rules = Rules.Select(rule => rule with
        {
            Days = Tri.Of(changed(rule.Rule.When) ? ConditionDays.On(rule.Rule.When, signals, day) : rule.Days[day]),
            Lifted = DayBits.None(1),
        });
        return Of(Packs, signals.Slice(day, 1, []), Facts, [.. rules]).StateAt(0);
    }

    internal int IndexOf(LocalDate date) => Span.Contains(date)
        ? Span.IndexOf(date)
        : throw new ArgumentOutOfRangeException(nameof(date), date, $"The evaluation covers {Span}.");
}
