using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

/// <summary>Work is scheduled for tomorrow, and tomorrow is closed or unknown.</summary>
internal static class DoNotStartNotice
{
    public static Notice Of(Night night, TaskTonight task, LocalDate day) => new(
        $"Do not start tomorrow: {task.Title}, {DayWords.Of(day)}",
        [
            new Paragraph($"{task.Title} is scheduled for {DayWords.Of(day)}. Do not start: "
                + $"the day is {Wording.Of(task.Evaluation[day])}."),
            new Heading("Why"),
            Reasons.Deciding(task.Evaluation, day),
            NoticeBlocks.Forecast(task),
            NoticeBlocks.Next(task, day),
            .. NoticeBlocks.Ending(night, "You get this as the crew lead of the work."),
        ]);
}
