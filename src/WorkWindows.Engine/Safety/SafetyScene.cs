using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Safety;

/// <summary>All that a checklist is put together from.</summary>
/// <param name="Practice">The kind of work.</param>
public sealed record SafetyScene(Practice Practice)
{
    /// <summary>The day's weather and light.</summary>
    public DayFigures Figures { get; init; } = DayFigures.Unknown;

    /// <summary>What has been noted of the parcel.</summary>
    public ImmutableSortedSet<SiteFlag> SiteFlags { get; init; } = [];

    /// <summary>What rules ask for on the day: measures of limits, requirements, and exceptions that people made.</summary>
    public ImmutableArray<SafetyItem> Asked { get; init; } = [];

    /// <summary>Of a task on a day. Seasons come in by the rules that ask for something in them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static SafetyScene Of(TaskEvaluation evaluation, LocalDate day) => new(evaluation.Facts.Practice)
    {
        Figures = DayFigures.Of(evaluation.Signals, day),
        SiteFlags = evaluation.Facts.SiteFlags,
        Asked = [.. Explanation.Of(evaluation, day).Verdicts.Select(Item).OfType<SafetyItem>()],
    };

    private static SafetyItem? Item(RuleVerdict verdict)
    {
        var rule = verdict.Rule;
        var text = verdict switch
        {
            { Lifting.Last: not null } => Wording.Lifted(verdict)!,
            { Spoke: true, Rule.Effect: Effect.Limits or Effect.Requires } => rule.Measure ?? rule.Because,
            _ => null,
        };
        return text is null
            ? null
            : new(rule.Id, text, SafetyItemKind.Today, new(Wording.Of(rule.Source)), rule.Authority);
    }
}
