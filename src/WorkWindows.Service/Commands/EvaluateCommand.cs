using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Commands;

/// <summary>Prints the windows of the tasks of two files for one station's weather: no server, no database.</summary>
internal static class EvaluateCommand
{
    public static Command Create()
    {
        var input = new EvaluationOptions();
        var packs = PackFiles.Option();
        var from = DateOption.Required("--from", "First day, such as 2024-01-01.");
        var to = DateOption.Required("--to", "Last day, included.");
        var output = Printing.Output();
        var command = new Command("evaluate", "Print the windows of planned tasks from files, without a server.");
        input.AddTo(command);
        foreach (var option in new Option[] { from, to, packs, output })
            command.Add(option);
        command.SetAction(result => Run(
            () => input.Read(result), result.GetValue(packs) ?? [], result.GetRequiredValue(from),
            result.GetRequiredValue(to), result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(Func<EvaluationInput?> read, FileInfo[] files, LocalDate from, LocalDate to, bool asJson)
    {
        if (to < from)
            return CommandLine.Refuse($"--to '{to:R}': a day that is not before --from");
        var packs = PackFiles.Add(ShippedPacks.Read(), files, Console.Error);
        if (read() is not { } input || packs is not { } sound)
            return CommandLine.BadInput;
        var days = DaySpan.Between(from, to);
        input.Warn(Console.Error, days);
        var seasons = input.Evaluate(
            days, sound, new SlowProgress(Console.Error, TimeProvider.System));
        if (asJson)
            SeasonOutput.WriteJson(Console.Out, seasons);
        else
            SeasonOutput.WriteTable(Console.Out, seasons);
        return 0;
    }
}
