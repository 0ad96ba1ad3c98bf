using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices;

/// <summary>Why days are as they are, in the plain words of a mail.</summary>
internal static class Reasons
{
    private const int DaysAhead = 30;

    /// <summary>The runs of days of a window of which the same is said; limited ones with their measures.</summary>
    public static IEnumerable<Item> Days(TaskEvaluation evaluation, Window window, TemperatureScale scale) =>
        Alike(Dates(window), day => Day(evaluation, day, scale), Equals)
            .Select(run => new Item($"{MailDays.Of(run.Days)}: {run.Said}"));

    /// <summary>Runs of consecutive days of which the same is said.</summary>
    /// <param name="ascending">Days in ascending order.</param>
    /// <param name="say">What is said of a day.</param>
    /// <param name="same">Whether two sayings are the same.</param>
    public static IReadOnlyList<(Window Days, T Said)> Alike<T>(
        IEnumerable<LocalDate> ascending, Func<LocalDate, T> say, Func<T, T, bool> same)
    {
        var runs = new List<(Window Days, T Said)>();
        foreach (var day in ascending)
        {
            var said = say(day);
            if (runs is [.., var (days, before)] && days.Last.PlusDays(1) == day && same(before, said))
                runs[^1] = (days with { Last = day }, before);
            else
                runs.Add((new(day, day), said));
        }
        return runs;
    }

    private static IEnumerable<LocalDate> Dates(Window window)
    {
        for (var day = window.First; day <= window.Last; day = day.PlusDays(1))
            yield return day;
    }

    /// <summary>The state of a workable day in a line, with its measures.</summary>
    public static string Day(TaskEvaluation evaluation, LocalDate day, TemperatureScale scale) =>
        evaluation[day] == DayState.Limited ? Limited(evaluation, day, scale) : Wording.Of(evaluation[day]);

    /// <summary>The rules that close a day, or leave it unknown, one an item.</summary>
    public static Item[] Deciding(TaskEvaluation evaluation, LocalDate day, TemperatureScale scale) =>
    [
        .. Explanation.Of(evaluation, day).Deciding.Select(verdict => new Item(
            $"{verdict.Rule.Title}: {Found(verdict, scale)}. {verdict.Rule.Because}",
            Wording.Of(verdict.Rule.Source))),
    ];

    /// <summary>The closing rules that do not hold on a day but may on another, each with its limits.</summary>
    public static Item[] WouldStop(TaskEvaluation evaluation, LocalDate day, TemperatureScale scale) =>
    [
        .. Explanation.Of(evaluation, day).Verdicts
            .Where(verdict => verdict is { Rule.Effect: Effect.Closes, Truth: not Truth.Holds }
                && !IsOutOfSeason(verdict))
            .Select(verdict => new Item(
                $"{verdict.Rule.Title}: {Limits(verdict.Findings.Where(MayChange), scale)}.")),
    ];

    /// <summary>Weather alone cannot make it hold within a month, because its season is not near.</summary>
    private static bool IsOutOfSeason(RuleVerdict verdict) => verdict.Rule.When is AllOf
        && verdict.Findings.Any(finding => finding is CalendarFinding { Truth: Truth.Fails, MarginDays: < -DaysAhead });

    /// <summary>A season that has begun need not be said again.</summary>
    private static bool MayChange(Finding finding) => finding is not CalendarFinding { Truth: Truth.Holds };

    /// <summary>Until when the calendar lets the work go on after a day, and what ends it.</summary>
    public static string Season(TaskEvaluation evaluation, LocalDate after, TemperatureScale scale)
    {
        if (SeasonEdges.Next(evaluation, after) is not { } end)
            return "Season: no date of the calendar ends it within a year.";
        var verdict = Explanation.Of(evaluation, end.Day).Verdicts.Single(verdict => verdict.Rule == end.Rule);
        var until = Wording.Of(end.Day.PlusDays(-1));
        var range = Limits(verdict.Findings, scale);
        var season = verdict.Truth == Truth.Holds
            ? $"Season: expected to stay open until {until}. The day after begins '{end.Rule.Title}': {range}."
            : $"Season: open until {until} at least. What is not known yet decides when "
                + $"'{end.Rule.Title}' begins: {range}.";
        return $"{season}{Breaks(evaluation, after)}";
    }

    /// <summary>
    /// The breaks that the calendar makes in the rest of a season, each with its dates; empty for none.
    /// </summary>
    public static string Breaks(TaskEvaluation evaluation, LocalDate after) =>
        SeasonEdges.Breaks(evaluation, after).ToList() is { Count: > 0 } breaks
            ? $" With a break in between that the calendar makes: {MailDays.Of(breaks)}."
            : "";

    /// <summary>What would make each of the findings hold.</summary>
    public static string Limits(IEnumerable<Finding> findings, TemperatureScale scale) =>
        string.Join("; ", findings.Select(finding => Wording.LimitOf(finding.In(scale))));

    private static string Limited(TaskEvaluation evaluation, LocalDate day, TemperatureScale scale) =>
        "limited. " + string.Join(" ", Explanation.Of(evaluation, day).Deciding.Select(verdict =>
            Wording.Lifted(verdict) is { } exception ? $"{exception.TrimEnd('.')}."
                : $"{verdict.Rule.Measure} ({Found(verdict, scale)})"));

    private static string Found(RuleVerdict verdict, TemperatureScale scale)
    {
        if (verdict is { InventoryMissing: true, Truth: Truth.Unknown })
            return "the parcel's trees have not been inventoried";
        var spoke = verdict.Findings.Where(finding => finding.Truth == verdict.Truth).ToImmutableArray();
        return string.Join("; ", (spoke.IsEmpty ? verdict.Findings : spoke)
            .Select(finding => Wording.Of(finding.In(scale))));
    }
}
