using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>
/// Rule packs compiled for one set of signals: every rule becomes one set of days, computed when a task first asks for
/// it and shared by all tasks of the weather point. Safe for use by several threads.
/// </summary>
public sealed class PointRules
{
    private readonly (RulePack Pack, Rule Rule)[] rules;
    private readonly RuleDays?[] compiled;
    private readonly DayBits noDays;
    private readonly PointRules? alike;

    /// <param name="packs">The packs, higher ones first.</param>
    /// <param name="signals">The signals.</param>
    public PointRules(ImmutableArray<RulePack> packs, SignalSet signals)
    {
        (Packs, Signals) = (packs, signals);
        rules = [.. packs.SelectMany(pack => pack.Rules.Select(rule => (pack, rule)))];
        compiled = new RuleDays?[rules.Length];
        noDays = DayBits.None(signals.Span.Count);
    }

    /// <summary>The same packs for signals that differ in some; rules that look at none of these are shared.</summary>
    internal PointRules(PointRules alike, SignalSet signals)
    {
        (Packs, Signals, rules, noDays, this.alike) = (alike.Packs, signals, alike.rules, alike.noDays, alike);
        compiled = new RuleDays?[rules.Length];
    }

    public ImmutableArray<RulePack> Packs { get; }

    public SignalSet Signals { get; }

    /// <summary>What the rules say of one task on every day of the signals' span.</summary>
    public TaskEvaluation Evaluate(TaskFacts facts)
    {
        var applied = ImmutableArray.CreateBuilder<RuleDays>();
        for (var index = 0; index < rules.Length; index++)
        {
            var applies = ScopeMatch.Of(rules[index].Rule.Scope, facts);
            if (applies == Truth.Fails)
                continue;
            var days = Compiled(index);
            applied.Add(applies == Truth.Holds ? days : days with { Applies = applies });
        }
        return TaskEvaluation.Of(Packs, Signals, facts, applied.ToImmutable());
    }

    // Two threads may both compile a rule; the results are equal and either may stay.
    private RuleDays Compiled(int index)
    {
        var (pack, rule) = rules[index];
        if (alike is not null && LooksAlike(rule.When, alike.Signals))
            return alike.Compiled(index);
        return compiled[index] ??= new(pack, rule, ConditionDays.Of(rule.When, Signals), Truth.Holds, noDays);
    }

    private bool LooksAlike(Condition condition, SignalSet other) =>
        ConditionParts.Signals(condition).All(kind => ReferenceEquals(Signals[kind], other[kind]))
        && !ConditionParts.MentionsEvents(condition);
}
