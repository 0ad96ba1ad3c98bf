using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Notices.Templates;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices;

/// <summary>Tomorrow's work: its conditions, and what to wear, carry, do and stop for.</summary>
internal static class ReminderNotice
{
    public static Notice Of(Night night, TaskTonight task, LocalDate day, TemperatureScale scale)
    {
        var checklist = SafetyChecklist.For(SafetyScene.Of(task.Evaluation, day));
        var release = ReleaseOf(night, task, day, checklist);
        return NoticeTemplates.Fill("reminder", new
        {
            task.Title,
            Day = MailDays.Of(day),
            Work = Work(task),
            WaitsFor = TaskWords.WaitsFor(task.Task) is { } first ? $"{first} Do not begin before it is done." : "",
            State = Reasons.Day(task.Evaluation, day, scale),
            Season = Reasons.Season(task.Evaluation, day, scale),
            Release = release.Statement,
            release.IsReleased,
            Link = night.SiteAddress is { } address
                ? $"{address.TrimEnd('/')}/tasks/{task.Task.Id}/checklist?date={day:R}"
                : "",
            Conditions = DayFigures.Lines(task.Evaluation.Signals, day, scale)
                .Select(line => new Item(line)).ToArray(),
            Forecast = NoticeWords.Forecast(task),
            WouldStop = Reasons.WouldStop(task.Evaluation, day, scale),
            Checklist = Checklist(checklist).ToArray(),
            Sender = night.Organization,
        });
    }

    private static Release ReleaseOf(Night night, TaskTonight task, LocalDate day, SafetyChecklist checklist)
    {
        var lead = task.Task.LeadOn(day) is { } id ? night.People.GetValueOrDefault(id)?.Name : null;
        return Release.Of(
            task.Task, lead, Explanation.Of(task.Evaluation, day), task.Today, checklist.Version,
            night.Signed[(task.Task.Id, day)]);
    }

    private static string Work(TaskTonight task)
    {
        var quantity = task.Task.Quantity is { } amount ? $" {amount:0.##} {task.Task.QuantityUnit}." : "";
        var crew = task.Task.CrewSize > 1
            ? $"Crew of {task.Task.CrewSize}. Nobody works alone."
            : "Planned for one person, but nobody works alone: bring a second.";
        return $"{task.Title}.{quantity} {crew}";
    }

    private static IEnumerable<object> Checklist(SafetyChecklist checklist) =>
        checklist.Items.GroupBy(item => item.Kind).Select(part => new
        {
            Title = Title(part.Key),
            Items = part.Select(item => new Item(item.Statement, Source(item))).ToArray(),
        });

    private static string Title(SafetyItemKind kind) => kind switch
    {
        SafetyItemKind.Today => "This day and place ask",
        SafetyItemKind.Wear => "Wear",
        SafetyItemKind.Carry => "Carry",
        SafetyItemKind.Do => "Do",
        SafetyItemKind.Stop => "Stop",
    };

    private static string Source(SafetyItem item) =>
        item.FromMemory ? $"{item.Source}, not checked against the document" : $"{item.Source}";
}
