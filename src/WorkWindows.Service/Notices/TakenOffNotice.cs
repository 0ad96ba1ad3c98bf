using NodaTime;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Somebody was reminded of work that is not theirs on that day any more.</summary>
internal static class TakenOffNotice
{
    public static Notice Of(Night night, TaskTonight task, LocalDate day) => NoticeTemplates.Fill("taken-off", new
    {
        task.Title,
        Day = MailDays.Of(day),
        Instead = task.IsScheduledOn(day) ? "Somebody else does the work on that day."
            : task.NextDay() is { } next ? $"The work is planned for {MailDays.Of(next)} now."
            : "The work is planned for no day now.",
        Sender = night.Organization,
    });
}
