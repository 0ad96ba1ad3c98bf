using System.CommandLine;
using System.CommandLine.Parsing;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;

namespace WorkWindows.Service.Commands;

/// <summary>Prints the windows of the tasks of two files for one station's weather: no server, no database.</summary>
internal static class EvaluateCommand
{
    public static Command Create()
    {
        var parcels = new Option<FileInfo>("--parcels") { Required = true, Description = "GeoJSON file of parcels." };
        var tasks = new Option<FileInfo>("--tasks") { Required = true, Description = "CSV file of planned tasks." };
        var weather = new Option<FileInfo[]>("--weather")
        {
            Required = true,
            Description = "GHCN-Daily file of a station (.dly or by-station CSV, also .gz). A second one gives the wind.",
        };
        var from = new Option<LocalDate>("--from")
        {
            Required = true,
            CustomParser = Date,
            Description = "First day, such as 2024-01-01.",
        };
        var to = new Option<LocalDate>("--to")
        {
            Required = true,
            CustomParser = Date,
            Description = "Last day, included.",
        };
        var output = new Option<string>("--output")
        {
            DefaultValueFactory = _ => "table",
            Description = "table or json.",
        };
        output.AcceptOnlyFromAmong("table", "json");

        var command = new Command("evaluate", "Print the windows of planned tasks from files, without a server.")
        {
            parcels, tasks, weather, from, to, output,
        };
        command.SetAction(result => Run(
            new(result.GetRequiredValue(parcels), result.GetRequiredValue(tasks), result.GetRequiredValue(weather)),
            result.GetRequiredValue(from), result.GetRequiredValue(to), result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(EvaluationFiles files, LocalDate from, LocalDate to, bool asJson)
    {
        if (to < from)
            return CommandLine.Refuse($"--to '{to:R}': a day that is not before --from");
        if (!files.TryRead(out var input, out var faults))
        {
            foreach (var fault in faults)
                Console.Error.WriteLine(fault);
            return CommandLine.BadInput;
        }
        var seasons = input.Evaluate(DaySpan.Between(from, to), new SlowProgress(Console.Error, TimeProvider.System));
        if (asJson)
            SeasonOutput.WriteJson(Console.Out, seasons);
        else
            SeasonOutput.WriteTable(Console.Out, seasons);
        return 0;
    }

    private static LocalDate Date(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date })
            return date;
        result.AddError($"{result.Argument.Name} '{text}': a date such as 2024-01-31");
        return default;
    }
}
