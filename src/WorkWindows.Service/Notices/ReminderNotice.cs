using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Tomorrow's work: its conditions, and what to wear, carry, do and stop for.</summary>
internal static class ReminderNotice
{
    private static readonly (SignalKind Kind, RuleUnit Unit)[] Conditions =
    [
        (SignalKind.MinTemperatureC, RuleUnit.DegF),
        (SignalKind.MaxTemperatureC, RuleUnit.DegF),
        (SignalKind.WindMps, RuleUnit.Mph),
        (SignalKind.GustMps, RuleUnit.Mph),
        (SignalKind.DarkShiftMinutes, RuleUnit.Minutes),
    ];

    public static Notice Of(Night night, TaskTonight task, LocalDate day, TemperatureScale scale) =>
        NoticeTemplates.Fill("reminder", new
        {
            task.Title,
            Day = DayWords.Of(day),
            Work = Work(task),
            State = Reasons.Day(task.Evaluation, day, scale),
            Season = Reasons.Season(task.Evaluation, day, scale),
            Conditions = Conditions
                .Select(condition => Of(task.Evaluation, day, condition.Kind, condition.Unit.In(scale))).ToArray(),
            Forecast = NoticeWords.Forecast(task),
            WouldStop = Reasons.WouldStop(task.Evaluation, day, scale),
            Required = Required(task.Evaluation, day),
            Checklist = Checklist(task).ToArray(),
            Sender = night.Organization,
        });

    private static string Work(TaskTonight task)
    {
        var quantity = task.Task.Quantity is { } amount ? $" {amount:0.##} {task.Task.QuantityUnit}." : "";
        var crew = task.Task.CrewSize > 1
            ? $"Crew of {task.Task.CrewSize}. Nobody works alone."
            : "Planned for one person, but nobody works alone: bring a second.";
        return $"{task.Title}.{quantity} {crew}";
    }

    private static Item Of(TaskEvaluation evaluation, LocalDate day, SignalKind kind, RuleUnit unit)
    {
        var index = evaluation.Span.IndexOf(day);
        return new(evaluation.Signals[kind] is { } signal && signal.Bases[index] != Basis.Missing
            ? $"{Wording.Of(kind)}: {unit.FromSignalUnit(signal.Values[index]):0.#} {unit.Symbol()} "
                + $"({Wording.Of(signal.Bases[index])})"
            : $"{Wording.Of(kind)}: not known");
    }

    private static Item[] Required(TaskEvaluation evaluation, LocalDate day) =>
    [
        .. Explanation.Of(evaluation, day).Verdicts
            .Where(verdict => verdict is { Rule.Effect: Effect.Requires, Spoke: true })
            .Select(verdict => new Item(verdict.Rule.Measure!, Wording.Of(verdict.Rule.Source))),
    ];

    private static IEnumerable<object> Checklist(TaskTonight task) =>
        SafetyChecklist.For(task.Task.Practice).Items.GroupBy(item => item.Kind).Select(part => new
        {
            Title = Title(part.Key),
            Items = part.Select(item => new Item(item.Text, Source(item))).ToArray(),
        });

    private static string Title(SafetyItemKind kind) => kind switch
    {
        SafetyItemKind.Wear => "Wear",
        SafetyItemKind.Carry => "Carry",
        SafetyItemKind.Do => "Do",
        SafetyItemKind.Stop => "Stop",
    };

    private static string Source(SafetyItem item) =>
        item.FromMemory ? $"{item.Source}, not checked against the document" : $"{item.Source}";
}
