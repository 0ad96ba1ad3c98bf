using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>One rule on the days of one set of signals, as it bears on one task.</summary>
/// <param name="Pack">The pack that the rule stands in.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Days">On which days its condition holds.</param>
/// <param name="Applies">Holds, or unknown when the rule asks for something that nobody has said of the parcel.</param>
/// <param name="Lifted">The days on which something takes away what the rule says.</param>
public sealed record RuleDays(RulePack Pack, Rule Rule, Tri Days, Truth Applies, DayBits Lifted)
{
    /// <summary>What the rule says of a day, the doubt about its scope included; lifted, it says nothing.</summary>
    public Truth On(int day) =>
        Lifted[day] ? Truth.Fails
        : Days[day] == Truth.Holds && Applies == Truth.Unknown ? Truth.Unknown
        : Days[day];

    /// <summary>What the rule says, days on which it is lifted excepted.</summary>
    internal Tri Spoken => Lifted.IsEmpty ? Days : new(Days.Holds.Except(Lifted), Days.Fails | Lifted);
}
