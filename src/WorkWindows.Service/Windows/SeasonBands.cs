using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Windows;

/// <summary>A run of days that is drawn alike; the fill is the name of its style.</summary>
public sealed record BandRun(string Fill, LocalDate First, LocalDate Last);

/// <summary>A row of a season's drawing.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Effect">What the rule does, or null for the row of states.</param>
/// <param name="Label">The drawing in words.</param>
/// <param name="Runs">What is drawn, ascending; days without a run are left blank.</param>
public sealed record Band(string Title, string? Effect, string Label, IReadOnlyList<BandRun> Runs);

/// <summary>A task's season as rows of days: its states, and each rule that speaks in it.</summary>
/// <param name="States">The day states.</param>
/// <param name="Rules">The rules that hold, or may hold, on some day; closing ones first.</param>
/// <param name="Always">What is required on every day, and so tells no day from another.</param>
/// <param name="Quiet">The titles of the rules that were checked and hold on no day.</param>
public sealed record SeasonBands(
    Band States, IReadOnlyList<Band> Rules, IReadOnlyList<string> Always, IReadOnlyList<string> Quiet)
{
    private const int NamedRuns = 6;
    private const string InDoubt = "in-doubt";

    public static SeasonBands Of(TaskEvaluation evaluation, DaySpan days)
    {
        var rules = evaluation.Rules.OrderBy(rule => rule.Rule.Effect)
            .Select(rule => (rule.Rule, Runs: RunsOf(rule, evaluation.Span, days))).ToArray();
        return new(
            new("Day states", null, StatesIn(evaluation, days),
                [.. evaluation.Runs(days).Select(run => new BandRun(Wording.Of(run.State), run.First, run.Last))]),
            [.. rules.Where(rule => rule.Runs.Count > 0 && !IsAlways(rule)).Select(rule => Of(rule.Rule, rule.Runs))],
            [.. rules.Where(IsAlways).Select(rule => rule.Rule.Title).Distinct()],
            [.. rules.Where(rule => rule.Runs.Count == 0).Select(rule => rule.Rule.Title).Distinct()]);

        bool IsAlways((Rule Rule, List<BandRun> Runs) rule) => rule.Rule.Effect == Effect.Requires
            && rule.Runs is [{ Fill: not InDoubt } only] && only.First == days.First && only.Last == days.Last;
    }

    private static string StatesIn(TaskEvaluation evaluation, DaySpan days)
    {
        var counts = TaskSeason.Of(evaluation, days).Days;
        return $"{DayWords.Count(counts.Open, "day", "days")} open, {counts.Limited} limited, {counts.Unknown} unknown, {counts.Closed} closed";
    }

    private static List<BandRun> RunsOf(RuleDays rule, DaySpan span, DaySpan days)
    {
        var offset = span.IndexOf(days.First);
        var runs = new List<BandRun>();
        for (var day = 0; day < days.Count; day++)
        {
            var truth = rule.On(offset + day);
            var first = day;
            while (day + 1 < days.Count && rule.On(offset + day + 1) == truth)
                day++;
            if (truth != Truth.Fails)
                runs.Add(new(truth == Truth.Holds ? Wording.Of(rule.Rule.Effect) : InDoubt, days[first], days[day]));
        }
        return runs;
    }

    private static Band Of(Rule rule, List<BandRun> runs)
    {
        var named = runs.Take(NamedRuns).Select(run =>
            $"{(run.Fill == InDoubt ? "not known" : run.Fill)} "
            + $"{DayWords.WithYear(run.First)} to {DayWords.WithYear(run.Last)}");
        var more = runs.Count > NamedRuns ? $", and {runs.Count - NamedRuns} more times" : "";
        return new(rule.Title, Wording.Of(rule.Effect), $"{rule.Title}: {string.Join(", ", named)}{more}", runs);
    }
}
