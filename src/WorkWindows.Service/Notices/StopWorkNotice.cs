using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

/// <summary>Which days are taken back, why, and which still stand.</summary>
internal static class StopWorkNotice
{
    public static Notice Of(
        Night night, TaskTonight task, IReadOnlyList<LocalDate> withdrawn, IReadOnlyList<Window> standing) => new(
        $"Stop work: {task.Title}, not on {string.Join(", ", withdrawn.Select(DayWords.Of))}",
        [
            new Paragraph("These days were named as workable before. They are not any more: do not work on them."),
            .. withdrawn.SelectMany(day => new Block[]
            {
                new Heading($"{DayWords.Of(day)}: {Wording.Of(task.Evaluation[day])}"),
                Reasons.Deciding(task.Evaluation, day),
            }),
            new Heading("What still stands"),
            standing.Count > 0
                ? new Paragraph($"Workable as told before: {DayWords.Of(standing)}. The calendar entry is taken back as a "
                    + "whole.")
                : NoticeBlocks.Next(task, withdrawn[^1]),
            NoticeBlocks.Forecast(task),
            .. NoticeBlocks.Ending(night, "You get this because you own the land, or lead or were told of the work."),
        ]);
}
