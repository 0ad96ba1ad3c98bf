using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Work is scheduled for tomorrow, and tomorrow is closed or unknown.</summary>
internal static class DoNotStartNotice
{
    public static Notice Of(Night night, TaskTonight task, LocalDate day, TemperatureScale scale) =>
        NoticeTemplates.Fill("do-not-start", new
        {
            task.Title,
            Day = MailDays.Of(day),
            State = Wording.Of(task.Evaluation[day]),
            Why = Reasons.Deciding(task.Evaluation, day, scale),
            Forecast = NoticeWords.Forecast(task),
            Next = NoticeWords.Next(task, day),
            Sender = night.Organization,
        });
}
