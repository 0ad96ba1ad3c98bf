using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>What one rule says of one day.</summary>
/// <param name="Pack">The pack that the rule stands in.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Truth">
/// Whether its condition holds; unknown also when its scope is in doubt. Lifted, it does not.
/// </param>
/// <param name="ScopeInDoubt">The rule asks for something that nobody has said of the parcel.</param>
/// <param name="LetsGoOn">
/// For a rule that holds, the first later day on which it surely says nothing; null when there is none in the span.
/// </param>
/// <param name="Lifting">What takes away what the rule would say; null when nothing does.</param>
/// <param name="Findings">The comparisons and ranges of its condition, in the order of the file.</param>
public sealed record RuleVerdict(
    RulePack Pack, Rule Rule, Truth Truth, bool ScopeInDoubt, LocalDate? LetsGoOn, Lifting? Lifting,
    ImmutableArray<Finding> Findings)
{
    /// <summary>The rule did something to the day, or might have.</summary>
    public bool Spoke => Truth != Truth.Fails;

    /// <summary>The rule asks for species and the parcel has no inventory.</summary>
    public bool InventoryMissing => ScopeInDoubt && !Rule.Scope.SpeciesGroups.IsEmpty;

    /// <summary>The rule's source speaks of other years than the day's.</summary>
    public bool OutsideValidYears(LocalDate day) => day.Year < Rule.Valid.From || day.Year > Rule.Valid.To;
}

/// <summary>What takes away what a rule would say of a day.</summary>
/// <param name="By">The title of the lifting rule, or the person who made the exception.</param>
/// <param name="Reason">Why.</param>
/// <param name="Last">The last day of a person's exception; null for a rule.</param>
public sealed record Lifting(string By, string Reason, LocalDate? Last);

/// <summary>Why a day is as it is, read off an evaluation's own arrays.</summary>
/// <param name="Day">The day.</param>
/// <param name="State">Its state.</param>
/// <param name="Verdicts">Every rule that speaks of the task, in the order of the packs.</param>
public sealed record Explanation(LocalDate Day, DayState State, ImmutableArray<RuleVerdict> Verdicts)
{
    /// <summary>
    /// The rules that made the state: closing ones on a closed day, those in doubt on an unknown one.
    /// </summary>
    public IEnumerable<RuleVerdict> Deciding => State switch
    {
        DayState.Closed => Verdicts.Where(v => v is { Rule.Effect: Effect.Closes, Truth: Truth.Holds }),
        DayState.Unknown => Verdicts.Where(v => v is { Rule.Effect: Effect.Closes, Truth: Truth.Unknown }),
        DayState.Limited => Verdicts.Where(v => v is { Rule.Effect: Effect.Limits, Spoke: true }
            or { Rule.Effect: Effect.Closes or Effect.Limits, Lifting.Last: not null }),
        DayState.Open => [],
    };

    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static Explanation Of(TaskEvaluation evaluation, LocalDate day)
    {
        var index = evaluation.IndexOf(day);
        return new(day, evaluation.StateAt(index), [.. evaluation.Rules.Select(rule => Of(rule, evaluation, index))]);
    }

    private static RuleVerdict Of(RuleDays rule, TaskEvaluation evaluation, int day)
    {
        var truth = rule.On(day);
        // When what is not known lets go is not known either.
        var letsGo = truth == Truth.Holds ? rule.Spoken.Fails.FirstFrom(day + 1) : null;
        return new(rule.Pack, rule.Rule, truth, rule.Applies == Truth.Unknown,
            letsGo is { } index ? evaluation.Span[index] : null,
            rule.Lifted[day] && rule.Days[day] != Truth.Fails ? LiftingOf(rule.Rule, evaluation, day) : null,
            [.. Findings.Of(rule.Rule.When, evaluation.Signals, day)]);
    }

    private static Lifting LiftingOf(Rule rule, TaskEvaluation evaluation, int day)
    {
        var date = evaluation.Span[day];
        if (evaluation.Facts.Overrides.FirstOrDefault(exception =>
                exception.RuleId == rule.Id && exception.First <= date && date <= exception.Last) is { } exception)
        {
            return new(exception.By, exception.Reason, exception.Last);
        }
        var lifting =
            evaluation.Rules.First(other => other.Rule.Lifts == rule.Id && other.Days[day] == Truth.Holds).Rule;
        return new(lifting.Title, lifting.Because, null);
    }
}
