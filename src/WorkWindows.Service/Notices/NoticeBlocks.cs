using NodaTime;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Notices;

/// <summary>The parts that several notices share.</summary>
internal static class NoticeBlocks
{
    public static Paragraph Forecast(TaskTonight task) => new(
        task.Evaluation.Signals.ForecastIssued is { } issued
            ? $"Forecast issued {DayWords.Of(issued, task.Task.Zone)}."
            : "There is no forecast for this place.");

    public static Paragraph Next(TaskTonight task, LocalDate after)
    {
        var next = Engine.Evaluation.Outlook.Of(task.Evaluation, after);
        return new(next switch
        {
            { MayOpen: { } day } => $"Next: {DayWords.Of(day)} may open, once its forecast is known.",
            { Next: { } window } => $"Next workable days: {DayWords.Of(window)}.",
            _ => "No workable days are in sight.",
        });
    }

    /// <summary>Cautions, why the reader gets the mail, and who sends it.</summary>
    public static IEnumerable<Block> Ending(Night night, string because)
    {
        yield return new Heading("Before you rely on this");
        yield return new ItemList([.. Cautions.Usual.Select(caution => new Item(caution))]);
        yield return From(night.Organization, because);
    }

    /// <summary>Why the reader gets the mail, and who sends it.</summary>
    public static Paragraph From(Sender sender, string because) =>
        new($"{because} {sender.Name}, {sender.PostalAddress}");
}
