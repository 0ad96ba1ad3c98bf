using System.Collections.Immutable;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>
/// Leaves out the rules that ask for what a record does not have, so that the others can be looked at.
/// </summary>
internal static class MeasuredRules
{
    /// <summary>A signal that is known on a smaller share of the days is not in the record.</summary>
    private const double MinKnown = 0.5;

    public static (ImmutableArray<RulePack> Packs, ImmutableArray<string> LeftOut) Of(
        ImmutableArray<RulePack> packs, SignalSet signals)
    {
        var known = signals.Signals.Values
            .Where(signal => signal.Bases.Count(basis => basis != Basis.Missing) >= MinKnown * signals.Span.Count)
            .Select(signal => signal.Kind).ToHashSet();
        var leftOut = packs.SelectMany(pack => pack.Rules).Where(rule => !IsMeasured(rule)).Select(rule => rule.Id);
        return (
            [.. packs.Select(pack => pack with { Rules = [.. pack.Rules.Where(IsMeasured)] })],
            [.. leftOut.Order(StringComparer.Ordinal)]);

        bool IsMeasured(Rule rule) => ConditionParts.Signals(rule.When).All(known.Contains);
    }
}
