using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>One rule on the days of one set of signals, as it bears on one task.</summary>
/// <param name="Pack">The pack that the rule stands in.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Days">On which days its condition holds.</param>
/// <param name="Applies">Holds, or unknown when the parcel has no inventory and the rule asks for species.</param>
public sealed record RuleDays(RulePack Pack, Rule Rule, Tri Days, Truth Applies)
{
    /// <summary>What the rule says of a day, the doubt about its scope included.</summary>
    public Truth On(int day) => Days[day] == Truth.Holds && Applies == Truth.Unknown ? Truth.Unknown : Days[day];
}
