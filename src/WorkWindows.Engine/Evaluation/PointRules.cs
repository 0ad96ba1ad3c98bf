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

    /// <param name="packs">The packs, higher ones first.</param>
    /// <param name="signals">The signals.</param>
    public PointRules(ImmutableArray<RulePack> packs, SignalSet signals)
    {
        (Packs, Signals) = (packs, signals);
        rules = [.. packs.SelectMany(pack => pack.Rules.Select(rule => (pack, rule)))];
        compiled = new RuleDays?[rules.Length];
        noDays = DayBits.None(signals.Span.Count);
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
        // In doubt whether it is lifted, a rule stands.
        foreach (var lifting in applied.Where(days => days is { Rule.Lifts: not null, Applies: Truth.Holds }).ToArray())
            Lift(applied, lifting.Rule.Lifts!, lifting.Days.Holds);
        foreach (var exception in facts.Overrides)
            Lift(applied, exception.RuleId, OverrideDays.Of(exception, Signals.Span));
        return TaskEvaluation.Of(this, facts, applied.ToImmutable());
    }

    private static void Lift(ImmutableArray<RuleDays>.Builder applied, string ruleId, DayBits days)
    {
        for (var index = 0; index < applied.Count; index++)
        {
            if (applied[index] is { Rule.MayBeLifted: true } rule && rule.Rule.Id == ruleId)
                applied[index] = rule with { Lifted = rule.Lifted | days };
        }
    }

    // Two threads may both compile a rule; the results are equal and either may stay.
    private RuleDays Compiled(int index)
    {
        var (pack, rule) = rules[index];
        return compiled[index] ??= new(pack, rule, ConditionDays.Of(rule.When, Signals), Truth.Holds, noDays);
    }
}

/// <summary>The days on which an override counts.</summary>
internal static class OverrideDays
{
    public static DayBits Of(RuleOverride exception, DaySpan span) =>
        DayBits.Range(span.Count, span.IndexOf(exception.First), span.IndexOf(exception.Last));
}
