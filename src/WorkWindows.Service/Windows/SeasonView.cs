using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Chances;

namespace WorkWindows.Service.Windows;

/// <summary>One task's season, as its page shows it.</summary>
/// <param name="Task">The task.</param>
/// <param name="Today">The state of today and the days that follow; null for a season without it.</param>
/// <param name="Scale">The days drawn.</param>
/// <param name="Bands">What is drawn of states and rules.</param>
/// <param name="Season">The windows in the days.</param>
/// <param name="Rows">The same as lines of a table.</param>
/// <param name="Temperatures">The chart; null when no temperature is known.</param>
/// <param name="Chances">What past years say of the days from today on; null for a season without them.</param>
/// <param name="Says">Each day in a line: the day, its state and why.</param>
public sealed record SeasonView(
    TaskSummary Task,
    SeasonToday? Today,
    StripScale Scale,
    SeasonBands Bands,
    TaskSeason Season,
    IReadOnlyList<SeasonRow> Rows,
    TemperatureChart? Temperatures,
    SeasonChances? Chances,
    IReadOnlyList<string> Says)
{
    private const int DaysBack = 60;
    private const int DaysAhead = 365;

    /// <summary>The days of a year, or without one the coming year and the two months behind.</summary>
    public static DaySpan DaysOf(int? year, LocalDate today) => year is { } chosen
        ? DaySpan.Between(new(chosen, 1, 1), new(chosen, 12, 31))
        : DaySpan.Between(today.PlusDays(-DaysBack), today.PlusDays(DaysAhead));

    /// <summary>The chances as bars; null when none are told.</summary>
    public ChanceBars? Bars => Chances is null ? null : ChanceBars.Of(Chances);

    /// <param name="input">The task.</param>
    /// <param name="days">The days to show.</param>
    /// <param name="today">The day it is there.</param>
    /// <param name="hasTemperatures">Whether the temperatures are drawn.</param>
    public static SeasonView Of(TaskInput input, DaySpan days, LocalDate today, bool hasTemperatures = true) => Of(
        input.Evaluated(), days, today,
        days.Contains(today) ? SeasonChances.Of(input, DaySpan.Between(today, days.Last)) : null, hasTemperatures);

    public static SeasonView Of(
        EvaluatedTask task, DaySpan days, LocalDate today, SeasonChances? chances = null, bool hasTemperatures = true)
    {
        var season = TaskSeason.Of(task.Evaluation, days);
        return new(
            task.Task,
            days.Contains(today) ? SeasonToday.Of(task, days, today) : null,
            new(days),
            SeasonBands.Of(task.Evaluation, days),
            season,
            SeasonRow.Of(season, task.Evaluation),
            hasTemperatures ? TemperatureChart.Of(task.Evaluation, days, today) : null,
            chances,
            [.. Enumerable.Range(0, days.Count).Select(index => Say(Explanation.Of(task.Evaluation, days[index]), chances))]);
    }

    private static string Say(Explanation day, SeasonChances? chances)
    {
        var why = string.Join("; ", day.State == DayState.Unknown
            ? [OutlookWords.Few(day)]
            : day.Deciding.Select(verdict => verdict.Rule.Title).Distinct());
        return $"{DayWords.WithYear(day.Day)}: {Wording.Of(day.State)}{(why.Length > 0 ? $", {why}" : "")}"
            + (day.State == DayState.Unknown && chances is { AreTold: true } told && told.Days.Contains(day.Day)
                && told.Each[told.Days.IndexOf(day.Day)].Share is { } share
                    ? string.Create(CultureInfo.InvariantCulture, $"; {share:0 %} of past years could be worked")
                    : "");
    }
}

/// <summary>Where a task stands today.</summary>
public sealed record SeasonToday(DayStatement Statement, string Outlook, IReadOnlyList<DayCell> Cells)
{
    public static SeasonToday Of(EvaluatedTask task, DaySpan days, LocalDate today)
    {
        var shown = Math.Min(WeekView.DaysShown, DaySpan.Between(today, days.Last).Count);
        return new(
            DayStatement.Of(Explanation.Of(task.Evaluation, today), today),
            OutlookWords.Of(task.Evaluation, today),
            DayCell.Of(task, new(today, shown), today, null));
    }
}
