using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Engine.Signals;

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

    public static Notice Of(Night night, TaskTonight task, LocalDate day) => new(
        $"Tomorrow: {task.Title}, {DayWords.Of(day)}",
        [
            new Paragraph(Work(task)),
            new Paragraph($"{DayWords.Of(day)}: {Reasons.Day(task.Evaluation, day)}"),
            new Heading("Conditions"),
            new ItemList([.. Conditions.Select(condition => Of(task.Evaluation, day, condition))]),
            NoticeBlocks.Forecast(task),
            new Heading("What would stop it"),
            Reasons.WouldStop(task.Evaluation, day),
            .. Required(task.Evaluation, day),
            .. Checklist(task),
            .. NoticeBlocks.Ending(night, "You get this as the crew lead of the work."),
        ]);

    private static string Work(TaskTonight task)
    {
        var quantity = task.Task.Quantity is { } amount ? $" {amount:0.##} {task.Task.QuantityUnit}." : "";
        var crew = task.Task.CrewSize > 1
            ? $"Crew of {task.Task.CrewSize}. Nobody works alone."
            : "Planned for one person, but nobody works alone: bring a second.";
        return $"{task.Title}.{quantity} {crew}";
    }

    private static Item Of(TaskEvaluation evaluation, LocalDate day, (SignalKind Kind, RuleUnit Unit) condition)
    {
        var index = evaluation.Span.IndexOf(day);
        return new(evaluation.Signals[condition.Kind] is { } signal && signal.Bases[index] != Basis.Missing
            ? $"{Wording.Of(condition.Kind)}: {condition.Unit.FromSignalUnit(signal.Values[index]):0.#} "
                + $"{condition.Unit.Symbol()} ({Wording.Of(signal.Bases[index])})"
            : $"{Wording.Of(condition.Kind)}: not known");
    }

    private static IEnumerable<Block> Required(TaskEvaluation evaluation, LocalDate day)
    {
        var items = Explanation.Of(evaluation, day).Verdicts
            .Where(verdict => verdict is { Rule.Effect: Effect.Requires, Spoke: true })
            .Select(verdict => new Item(verdict.Rule.Measure!, Wording.Of(verdict.Rule.Source))).ToImmutableArray();
        return items.IsEmpty ? [] : [new Heading("This day and place also ask"), new ItemList(items)];
    }

    private static IEnumerable<Block> Checklist(TaskTonight task) =>
        SafetyChecklist.For(task.Task.Practice).Items.GroupBy(item => item.Kind).SelectMany(part => new Block[]
        {
            new Heading(Title(part.Key)),
            new ItemList([.. part.Select(item => new Item(item.Text, Source(item)))]),
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
