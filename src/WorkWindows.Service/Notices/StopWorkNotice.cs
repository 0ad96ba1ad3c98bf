using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Which days are taken back, why, and which still stand.</summary>
internal static class StopWorkNotice
{
    public static Notice Of(
        Night night, TaskTonight task, IReadOnlyList<LocalDate> withdrawn, IReadOnlyList<Window> standing,
        TemperatureScale scale) => NoticeTemplates.Fill("stop-work", new
        {
            task.Title,
            Days = DayWords.Of(StopWork.Runs(withdrawn)),
            Withdrawn = withdrawn.Select(day => new
            {
                Date = DayWords.Of(day),
                State = Wording.Of(task.Evaluation[day]),
                Why = Reasons.Deciding(task.Evaluation, day, scale),
            }).ToArray(),
            Stands = standing.Count > 0
                ? $"Workable as told before: {DayWords.Of(standing)}. The calendar entry is taken back as a whole."
                : NoticeWords.Next(task, withdrawn[^1]),
            Forecast = NoticeWords.Forecast(task),
            Sender = night.Organization,
        });
}
