using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices.Seasons;

/// <summary>The day on which a rule of the calendar begins to close the work, or has ceased to.</summary>
internal readonly record struct SeasonEdge(Rule Rule, LocalDate Day);

/// <summary>Where the calendar alone, with the events of nature that move it, ends or begins a season.</summary>
internal static class SeasonEdges
{
    /// <summary>
    /// The first day after one from which rules of the calendar may close the work for longer than
    /// <see cref="TaskChances.LongestBreakDays"/>; null for none. A shorter closure is a break in the season and not
    /// its end.
    /// </summary>
    public static SeasonEdge? Next(TaskEvaluation evaluation, LocalDate after)
    {
        var rules = OfCalendar(evaluation, after).ToList();
        var first = evaluation.Span.IndexOf(after) + 1;
        return Closures(evaluation, rules, after).Where(run => !IsBreak(evaluation, run))
            .Select(run => Math.Max(run.First, first))
            .Select(day => (SeasonEdge?)new SeasonEdge(
                rules.First(rule => !Days(evaluation, rule).Fails[day]), evaluation.Span[day]))
            .FirstOrDefault();
    }

    /// <summary>Whether a rule of the calendar closes a day.</summary>
    public static bool IsClosed(TaskEvaluation evaluation, LocalDate day) => OfCalendar(evaluation, day)
        .Any(rule => Days(evaluation, rule).Holds[evaluation.Span.IndexOf(day)]);

    /// <summary>The breaks in a season between one day and its end, as <see cref="Next"/> gives it.</summary>
    public static IEnumerable<Window> Breaks(TaskEvaluation evaluation, LocalDate after) =>
        Closures(evaluation, OfCalendar(evaluation, after), after).TakeWhile(run => IsBreak(evaluation, run))
            .Select(run => new Window(evaluation.Span[run.First], evaluation.Span[run.Last]));

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

    /// <summary>The runs of days that end after one on which some of the rules may close the work, in order.</summary>
    private static IEnumerable<(int First, int Last)> Closures(
        TaskEvaluation evaluation, IEnumerable<Rule> rules, LocalDate after)
    {
        var index = evaluation.Span.IndexOf(after);
        return rules
            .Aggregate(DayBits.None(evaluation.Span.Count), (days, rule) => days | ~Days(evaluation, rule).Fails)
            .Runs().Where(run => run.Last > index);
    }

    /// <summary>A run that touches an end of what was evaluated may be longer than is seen of it.</summary>
    private static bool IsBreak(TaskEvaluation evaluation, (int First, int Last) run) =>
        run.Last - run.First < TaskChances.LongestBreakDays && run.First > 0 && run.Last < evaluation.Span.Count - 1;

    private static Tri Days(TaskEvaluation evaluation, Rule rule) =>
        evaluation.Rules.Single(applied => applied.Rule == rule).Days;
}
