using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices.Seasons;

/// <summary>The day on which a rule of the calendar begins to close the work, or has ceased to.</summary>
internal readonly record struct SeasonEdge(Rule Rule, LocalDate Day);

/// <summary>Where the calendar alone, with the events of nature that move it, ends or begins a season.</summary>
internal static class SeasonEdges
{
    /// <summary>The first day after one on which a rule of the calendar may close the work; null for none.</summary>
    public static SeasonEdge? Next(TaskEvaluation evaluation, LocalDate after) => OfCalendar(evaluation, after)
        .Select(rule => (Rule: rule, Day: MayHold(evaluation, rule, after)))
        .Where(end => end.Day is not null)
        .OrderBy(end => end.Day)
        .Select(end => (SeasonEdge?)new SeasonEdge(end.Rule, end.Day!.Value)).FirstOrDefault();

    /// <summary>
    /// The first later day on which no rule of the calendar may close the work any more, with the rule that closed the
    /// day before it longest; null when none closes today, or when they close all the days.
    /// </summary>
    /// <param name="evaluation">The task's evaluation.</param>
    /// <param name="today">The day to look from.</param>
    /// <param name="days">How many days to look ahead.</param>
    public static SeasonEdge? Opening(TaskEvaluation evaluation, LocalDate today, int days)
    {
        var rules = OfCalendar(evaluation, today).ToList();
        if (!rules.Exists(rule => Days(evaluation, rule).Holds[evaluation.Span.IndexOf(today)]))
            return null;
        for (var day = today.PlusDays(1); day <= today.PlusDays(days); day = day.PlusDays(1))
        {
            var index = evaluation.Span.IndexOf(day);
            if (rules.TrueForAll(rule => Days(evaluation, rule).Fails[index]))
                return new(rules.First(rule => !Days(evaluation, rule).Fails[index - 1]), day);
        }
        return null;
    }

    private static IEnumerable<Rule> OfCalendar(TaskEvaluation evaluation, LocalDate day) =>
        Explanation.Of(evaluation, day).Verdicts
            .Where(verdict => verdict.Rule.Effect == Effect.Closes
                && verdict.Findings.All(finding => finding is CalendarFinding))
            .Select(verdict => verdict.Rule);

    private static LocalDate? MayHold(TaskEvaluation evaluation, Rule rule, LocalDate after) =>
        (~Days(evaluation, rule).Fails).FirstFrom(evaluation.Span.IndexOf(after) + 1) is { } index
            ? evaluation.Span[index]
            : null;

    private static Tri Days(TaskEvaluation evaluation, Rule rule) =>
        evaluation.Rules.Single(applied => applied.Rule == rule).Days;
}
