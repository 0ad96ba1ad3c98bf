using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

/// <summary>The sentences that several notices share.</summary>
internal static class NoticeWords
{
    public static string Forecast(TaskTonight task) => task.Evaluation.Signals.ForecastIssued is { } issued
        ? $"Forecast issued {MailDays.Of(issued, task.Task.Zone)}."
        : "There is no forecast for this place.";

    public static string Next(TaskTonight task, LocalDate after) => Outlook.Of(task.Evaluation, after) switch
    {
        { MayOpen: { } day } => $"Next: {MailDays.Of(day)} may open, once its forecast is known.",
        { Next: { } window } => $"Next workable days: {MailDays.Of(window)}.",
        _ => "No workable days are in sight.",
    };

    /// <summary>The properties of tasks, for a subject: one or two by name, of more the first.</summary>
    public static string Places(IEnumerable<TaskTonight> tasks) => Places(tasks.Select(task => task.Task.PropertyName));

    public static string Places(IEnumerable<string> properties)
    {
        var places = properties.Distinct().ToList();
        return places.Count switch
        {
            1 => places[0],
            2 => $"{places[0]} and {places[1]}",
            _ => $"{places[0]} and {places.Count - 1} more",
        };
    }
}
