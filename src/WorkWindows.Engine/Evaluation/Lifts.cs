using System.Collections.Immutable;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Takes away from rules what other rules or people's exceptions lift.</summary>
internal static class Lifts
{
    /// <summary>
    /// The rules with the days on which each is lifted. In doubt whether it is lifted, a rule stands; regulation and
    /// life safety stand always.
    /// </summary>
    public static ImmutableArray<RuleDays> Apply(ImmutableArray<RuleDays> rules, TaskFacts facts, DaySpan span)
    {
        var lifting = rules.Where(rule => rule is { Rule.Lifts: not null, Applies: Truth.Holds }).ToArray();
        if (lifting.Length == 0 && facts.Overrides.IsEmpty)
            return rules;
        var lifted = rules.ToBuilder();
        foreach (var rule in lifting)
            Lift(lifted, rule.Rule.Lifts!, rule.Days.Holds);
        foreach (var exception in facts.Overrides)
            Lift(lifted, exception.RuleId, Days(exception, span));
        return lifted.ToImmutable();
    }

    /// <summary>The days on which a person's exception counts.</summary>
    public static DayBits Days(RuleOverride exception, DaySpan span) =>
        DayBits.Range(span.Count, span.IndexOf(exception.First), span.IndexOf(exception.Last));

    private static void Lift(ImmutableArray<RuleDays>.Builder rules, string ruleId, DayBits days)
    {
        for (var index = 0; index < rules.Count; index++)
        {
            if (rules[index] is { Rule.MayBeLifted: true } rule && rule.Rule.Id == ruleId)
                rules[index] = rule with { Lifted = rule.Lifted | days };
        }
    }
}
