using System.CommandLine;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Service.Commands;

/// <summary>The options of every command that evaluates the tasks of files.</summary>
internal sealed class EvaluationOptions
{
    private readonly Option<FileInfo> parcels = new("--parcels")
    {
        Required = true,
        Description = "GeoJSON file of parcels.",
    };

    private readonly Option<FileInfo> tasks = new("--tasks")
    {
        Required = true,
        Description = "CSV file of planned tasks.",
    };

    private readonly Option<FileInfo[]> weather = new("--weather")
    {
        Required = true,
        Description = "A station's record (.dly, CSV, tabs; also .gz). A second one gives the wind.",
    };

    private readonly Option<StationUnits?> weatherUnits = new("--weather-units")
    {
        Description = "Units of station records that do not name them: metric, standard (°F, inches, mph) or tenths.",
    };

    private readonly Option<string?> organization = new("--organization")
    {
        Description = "Who plans the tasks; without it, rules that name organizations cannot be known.",
    };

    public void AddTo(Command command)
    {
        command.Add(parcels);
        command.Add(tasks);
        command.Add(weather);
        command.Add(weatherUnits);
        command.Add(organization);
    }

    /// <summary>The files' contents; null when anything in them is wrong, which has been written then.</summary>
    public EvaluationInput? Read(ParseResult result)
    {
        var files = new EvaluationFiles(
            result.GetRequiredValue(parcels), result.GetRequiredValue(tasks), result.GetRequiredValue(weather),
            result.GetValue(weatherUnits));
        if (files.TryRead(out var input, out var faults))
            return input with { Organization = result.GetValue(organization) };
        foreach (var fault in faults)
            Console.Error.WriteLine(fault);
        return null;
    }
}
