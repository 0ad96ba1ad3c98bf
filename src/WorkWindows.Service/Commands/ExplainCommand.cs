using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>Says of one day of one task why it is as it is, and what would make it another.</summary>
internal static class ExplainCommand
{
    // Far enough to see when a rule lets go that holds for most of a year.
    private const int DaysAhead = 400;

    public static Command Create()
    {
        var input = new EvaluationOptions();
        var packs = PackFiles.Option();
        var task = new Option<string>("--task") { Required = true, Description = "The task's key in its file." };
        var on = DateOption.Required("--on", "The day, such as 2024-02-03.");
        var output = Printing.Output("text");
        var command = new Command("explain", "Say why a day of a task is as it is, without a server.");
        input.AddTo(command);
        foreach (var option in new Option[] { task, on, packs, output })
            command.Add(option);
        command.SetAction(result => Run(
            () => input.Read(result), result.GetValue(packs) ?? [], result.GetRequiredValue(task),
            result.GetRequiredValue(on), result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(Func<EvaluationInput?> read, FileInfo[] files, string key, LocalDate day, bool asJson)
    {
        var stack = PackFiles.Add(ShippedPacks.Read(), files, Console.Error);
        if (read() is not { } input || stack is not { } packs)
            return CommandLine.BadInput;
        if (input.Tasks.FirstOrDefault(row => row.Key == key) is not { } task)
        {
            return CommandLine.Refuse(
                $"--task '{key}': a task of the file: {string.Join(", ", input.Tasks.Select(row => row.Key))}");
        }
        var span = LeadIn.Before(new(day, DaysAhead), packs);
        input.Warn(Console.Error, new(day, 1));
        var (_, parcel, evaluations) = (input with { Tasks = [task] }).Evaluations(span, packs).Single();
        var explained = ExplainedDay.Of(task.Key, parcel.Parcel, evaluations[0], day);
        if (asJson)
            Printing.AsJson(Console.Out, explained);
        else
            explained.Write(Console.Out);
        return 0;
    }
}
