using System.CommandLine;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Chances;

namespace WorkWindows.Service.Commands;

/// <summary>Says how good the chances of the tasks of two files would have been in the years of a station's record.</summary>
internal static class BacktestCommand
{
    private const int MostLeadDays = 366;

    public static Command Create()
    {
        var input = new EvaluationOptions();
        var packs = PackFiles.Option();
        var lead = new Option<int>("--lead-days")
        {
            DefaultValueFactory = _ => BacktestPlan.Usual.LeadDays,
            Description = $"How many days ahead; {BacktestPlan.Usual.LeadDays} if not given.",
        };
        var plot = new Option<FileInfo?>("--plot") { Description = "SVG file for the reliability plot." };
        var output = Printing.Output();
        var command = new Command(
            "backtest", "Say how good the chances of planned tasks would have been in past years, from files.");
        input.AddTo(command);
        foreach (var option in new Option[] { lead, packs, plot, output })
            command.Add(option);
        command.SetAction(result => Run(
            () => input.Read(result), result.GetValue(packs) ?? [], result.GetRequiredValue(lead),
            result.GetValue(plot), result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(Func<EvaluationInput?> read, FileInfo[] files, int leadDays, FileInfo? plot, bool asJson)
    {
        if (leadDays is < 1 or > MostLeadDays)
            return CommandLine.Refuse($"--lead-days '{leadDays}': 1 to {MostLeadDays}");
        if (plot is { Directory.Exists: false })
            return CommandLine.Refuse($"--plot '{plot}': a file in a folder that exists");
        var packs = PackFiles.Add(ShippedPacks.Read(), files, Console.Error);
        if (read() is not { } input || packs is not { } sound)
            return CommandLine.BadInput;

        var plan = BacktestPlan.Usual with { LeadDays = leadDays };
        var sites = input.BacktestSites().ToArray();
        var progress = new SlowProgress(Console.Error, TimeProvider.System);
        var found = BacktestResult.None;
        foreach (var (number, site) in sites.Index())
        {
            found += Backtest.Of(site, sound, plan);
            progress.Report(number + 1, sites.Length, "parcels");
        }
        if (found.ByLead.Sum(lead => lead.Days) == 0)
            return CommandLine.Refuse("--weather: a record of at least sixteen years of minimum and maximum temperatures");
        if (plot is not null)
            File.WriteAllText(plot.FullName, ReliabilityPlot.Of(found.Reliability, "How often the chances came true"));
        if (asJson)
            Printing.AsJson(Console.Out, BacktestOutput.Plain(found));
        else
            BacktestOutput.Write(Console.Out, found);
        return 0;
    }
}
