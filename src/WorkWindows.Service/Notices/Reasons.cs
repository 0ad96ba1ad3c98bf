using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices;

/// <summary>Why days are as they are, in the plain words of a mail.</summary>
internal static class Reasons
{
    private const int DaysAhead = 30;

    /// <summary>The runs of equal days of a window; a limited day stands alone, with its measures.</summary>
    public static IEnumerable<Item> Days(TaskEvaluation evaluation, Window window)
    {
        foreach (var run in evaluation.Runs(DaySpan.Between(window.First, window.Last)))
        {
            if (run.State == DayState.Limited)
            {
                for (var day = run.First; day <= run.Last; day = day.PlusDays(1))
                    yield return new($"{DayWords.Of(day)}: {Limited(evaluation, day)}");
            }
            else
            {
                yield return new($"{DayWords.Of(new Window(run.First, run.Last))}: {Wording.Of(run.State)}");
            }
        }
    }

    /// <summary>The state of a workable day in a line, with its measures.</summary>
    public static string Day(TaskEvaluation evaluation, LocalDate day) =>
        evaluation[day] == DayState.Limited ? Limited(evaluation, day) : Wording.Of(evaluation[day]);

    /// <summary>The rules that close a day, or leave it unknown, one an item.</summary>
    public static ItemList Deciding(TaskEvaluation evaluation, LocalDate day) => new(
    [
        .. Explanation.Of(evaluation, day).Deciding.Select(verdict => new Item(
            $"{verdict.Rule.Title}: {Found(verdict)}. {verdict.Rule.Because}", Wording.Of(verdict.Rule.Source))),
    ]);

    /// <summary>The closing rules that do not hold on a day but may on another, each with its limits.</summary>
    public static ItemList WouldStop(TaskEvaluation evaluation, LocalDate day) => new(
    [
        .. Explanation.Of(evaluation, day).Verdicts
            .Where(verdict => verdict is { Rule.Effect: Effect.Closes, Truth: not Truth.Holds } && !IsOutOfSeason(verdict))
            .Select(verdict => new Item(
                $"{verdict.Rule.Title}: {string.Join("; ", verdict.Findings.Where(MayChange).Select(Wording.LimitOf))}.")),
    ]);

    /// <summary>Weather alone cannot make it hold within a month, because its season is not near.</summary>
    private static bool IsOutOfSeason(RuleVerdict verdict) => verdict.Rule.When is AllOf
        && verdict.Findings.Any(finding => finding is CalendarFinding { Truth: Truth.Fails, MarginDays: < -DaysAhead });

    /// <summary>A season that has begun need not be said again.</summary>
    private static bool MayChange(Finding finding) => finding is not CalendarFinding { Truth: Truth.Holds };

    /// <summary>Until when the calendar lets the work go on after a day, and what ends it.</summary>
    public static string Season(TaskEvaluation evaluation, LocalDate after)
    {
        var ends = Explanation.Of(evaluation, after).Verdicts
            .Where(verdict => verdict.Rule.Effect == Effect.Closes
                && verdict.Findings.All(finding => finding is CalendarFinding))
            .Select(verdict => (verdict.Rule, Day: MayHold(evaluation, verdict.Rule, after)))
            .Where(end => end.Day is not null)
            .OrderBy(end => end.Day).FirstOrDefault();
        if (ends.Day is not { } day)
            return "Season: no date of the calendar ends it within a year.";
        var verdict = Explanation.Of(evaluation, day).Verdicts.Single(verdict => verdict.Rule == ends.Rule);
        var until = Wording.Of(day.PlusDays(-1));
        var range = string.Join("; ", verdict.Findings.Select(Wording.LimitOf));
        return verdict.Truth == Truth.Holds
            ? $"Season: expected to stay open until {until}. The day after begins '{ends.Rule.Title}': {range}."
            : $"Season: open until {until} at least. What is not known yet decides when "
                + $"'{ends.Rule.Title}' begins: {range}.";
    }

    private static LocalDate? MayHold(TaskEvaluation evaluation, Rule rule, LocalDate after)
    {
        var days = (~evaluation.Rules.Single(applied => applied.Rule == rule).Days.Fails)
            .FirstFrom(evaluation.Span.IndexOf(after) + 1);
        return days is { } index ? evaluation.Span[index] : null;
    }

    private static string Limited(TaskEvaluation evaluation, LocalDate day) => "limited. " + string.Join(" ",
        Explanation.Of(evaluation, day).Deciding.Select(verdict =>
            Wording.Lifted(verdict) is { } exception ? $"{exception.TrimEnd('.')}."
                : $"{verdict.Rule.Measure} ({Found(verdict)})"));

    private static string Found(RuleVerdict verdict)
    {
        if (verdict is { InventoryMissing: true, Truth: Truth.Unknown })
            return "the parcel's trees have not been inventoried";
        var spoke = verdict.Findings.Where(finding => finding.Truth == verdict.Truth).ToImmutableArray();
        return string.Join("; ", (spoke.IsEmpty ? verdict.Findings : spoke).Select(Wording.Of));
    }
}
