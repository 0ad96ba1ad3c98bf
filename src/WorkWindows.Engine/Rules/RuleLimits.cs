using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>The limits that rules set to single values.</summary>
public static class RuleLimits
{
    /// <summary>
    /// The comparisons of signals in a rule's condition, in its order; none where it looks at none of them.
    /// </summary>
    /// <param name="rule">The rule.</param>
    /// <param name="signals">The signals that are of interest.</param>
    public static IEnumerable<Compare> Of(Rule rule, params SignalKind[] signals) =>
        ConditionParts.Leaves(rule.When).OfType<Compare>().Where(compare => signals.Contains(compare.Signal));
}
