using System.Collections.Frozen;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Hosting;

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

    /// <summary>Whether one of those speaks on any day of an evaluation.</summary>
    public static bool ForbidOnAnyDay(TaskEvaluation evaluation) => evaluation.Rules
        .Where(applied => Ids.Contains(applied.Rule.Id) && applied.Rule.Authority == Authority.Regulation)
        .Any(applied => Enumerable.Range(0, evaluation.Span.Count).Any(day => applied.On(day) != Truth.Fails));

    /// <summary>Why it is not done, with the rule and its source.</summary>
    /// <param name="law">The rule.</param>
    /// <param name="field">The field of the request that says that one person is alone.</param>
    public static Change<T> Refuse<T>(RuleVerdict law, string field)
    {
        var source = Wording.Of(law.Rule.Source);
        return Change.Unprocessable<T>(
            $"This work must not be done alone: {law.Rule.Because} {law.Rule.Measure} ({source})",
            ("field", field), ("value", 1), ("rule", law.Rule.Id), ("source", source));
    }
}
