using System.Collections.Immutable;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Service.Notices;

/// <summary>Which days of the week are good, why, and what would stop it.</summary>
internal static class GoodToCutNotice
{
    private const PracticeTraits Cutting =
        PracticeTraits.FellsTrees | PracticeTraits.WoundsTrees | PracticeTraits.ChainSaw;

    public static Notice Of(Night night, ImmutableArray<TaskNews> news) => new(
        Subject(news),
        [
            new Paragraph($"As of {DayWords.Of(night.Date)} no rule closes these days of the coming week."),
            .. news.SelectMany(Of),
            .. NoticeBlocks.Ending(night, "You get this as the owner of the land."),
        ]);

    private static IEnumerable<Block> Of(TaskNews news)
    {
        var (task, runs) = news;
        yield return new Heading(task.Title);
        yield return new ItemList([.. runs.SelectMany(run => Reasons.Days(task.Evaluation, run))]);
        yield return new Paragraph(Reasons.Season(task.Evaluation, runs[^1].Last));
        yield return NoticeBlocks.Forecast(task);
        yield return new Paragraph("What would stop it:");
        yield return Reasons.WouldStop(task.Evaluation, runs[^1].Last);
    }

    private static string Subject(ImmutableArray<TaskNews> news)
    {
        var good = news.Any(one => (one.Task.Task.Practice.Traits & Cutting) != 0) ? "Good to cut" : "Good to work";
        var places = news.Select(one => one.Task.Task.PropertyName).Distinct().ToList();
        var place = places.Count switch
        {
            1 => places[0],
            2 => $"{places[0]} and {places[1]}",
            _ => $"{places[0]} and {places.Count - 1} more",
        };
        var runs = news.SelectMany(one => one.Runs).Distinct().ToList();
        var days = runs.Count == 1 ? DayWords.Of(runs[0]) : $"from {DayWords.Of(runs.Min(run => run.First))}";
        return $"{good} this week: {place}, {days}";
    }
}
