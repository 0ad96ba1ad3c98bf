using System.Collections.Frozen;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Safety;

/// <summary>The rules that forbid working alone, as they speak of a task on a day.</summary>
public static class CompanyRules
{
    /// <summary>The ids of these rules in the shipped packs.</summary>
    public static FrozenSet<string> Ids { get; } = ["mi.not-alone", "crew.contact"];

    /// <returns>Those that hold, the state's before the nation's; none for work that may be done alone.</returns>
    public static IReadOnlyList<RuleVerdict> Of(Explanation explanation) =>
    [
        .. explanation.Verdicts.Where(verdict => verdict.Spoke && Ids.Contains(verdict.Rule.Id)).Reverse(),
    ];

    /// <returns>The rules for which one person is not let on the site, because they are the law.</returns>
    public static IReadOnlyList<RuleVerdict> Forbidding(Explanation explanation) =>
        [.. Of(explanation).Where(verdict => verdict.Rule.Authority == Authority.Regulation)];
}
