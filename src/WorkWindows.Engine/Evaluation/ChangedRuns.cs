using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>A longest run of days on which two evaluations differ in the same way for the same rules.</summary>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day, included.</param>
/// <param name="Before">The state in the first evaluation.</param>
/// <param name="After">The state in the second one.</param>
/// <param name="RuleIds">
/// The rules that made the state in one of them and say something else in the other, or are not there.
/// </param>
public sealed record ChangedRun(
    LocalDate First, LocalDate Last, DayState Before, DayState After, ImmutableArray<string> RuleIds);

/// <summary>Compares two evaluations of a task under the same signals.</summary>
public static class ChangedRuns
{
    /// <summary>The runs of days whose state differs, ascending.</summary>
    /// <exception cref="ArgumentException">The evaluations cover other spans.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the span.</exception>
    public static IEnumerable<ChangedRun> Between(TaskEvaluation before, TaskEvaluation after, DaySpan days)
    {
        if (before.Span != after.Span)
            throw new ArgumentException($"One covers {before.Span}, the other {after.Span}.", nameof(after));
        var (first, last) = (before.IndexOf(days.First), before.IndexOf(days.Last));
        ChangedRun? run = null;
        for (var day = first; day <= last; day++)
        {
            var change = OnDay(before, after, day);
            if (run is not null && change is not null && IsSameAs(run, change))
            {
                run = run with { Last = change.Last };
                continue;
            }
            if (run is not null)
                yield return run;
            run = change;
        }
        if (run is not null)
            yield return run;
    }

    private static ChangedRun? OnDay(TaskEvaluation before, TaskEvaluation after, int day)
    {
        var (was, becomes) = (before.StateAt(day), after.StateAt(day));
        if (was == becomes)
            return null;
        var (said, says) = (Words(before, day), Words(after, day));
        var responsible = said.Keys.Union(says.Keys).Where(id =>
        {
            var (old, recent) = (said.GetValueOrDefault(id), says.GetValueOrDefault(id));
            return old != recent && (Makes(old, was) || Makes(recent, becomes));
        });
        var date = before.Span[day];
        return new(date, date, was, becomes, [.. responsible]);
    }

    /// <summary>The state that each rule would make by itself; a rule without one is not listed.</summary>
    private static Dictionary<string, DayState> Words(TaskEvaluation evaluation, int day) => evaluation.Rules
        .Select(rule => (rule.Rule.Id, State: StateOf(rule.Rule.Effect, rule.On(day))))
        .Where(rule => rule.State != DayState.Open)
        // Packs of different hands may give two rules one id.
        .GroupBy(rule => rule.Id).ToDictionary(same => same.Key, same => same.Max(rule => rule.State));

    private static DayState StateOf(Effect effect, Truth truth) => (effect, truth) switch
    {
        (Effect.Closes, Truth.Holds) => DayState.Closed,
        (Effect.Closes, Truth.Unknown) => DayState.Unknown,
        (Effect.Limits, not Truth.Fails) => DayState.Limited,
        _ => DayState.Open,
    };

    private static bool Makes(DayState said, DayState state) => said == state && state != DayState.Open;

    private static bool IsSameAs(ChangedRun run, ChangedRun next) =>
        run.Before == next.Before && run.After == next.After && run.RuleIds.SequenceEqual(next.RuleIds);
}
