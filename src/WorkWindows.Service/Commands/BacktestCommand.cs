using System.Collections.Immutable;
using System.CommandLine;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Chances;

namespace WorkWindows.Service.Commands;

/// <summary>
/// Says how good the chances of the tasks of two files would have been in the years of a station's record.
/// </summary>
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
        var each = new Option<bool>("--each-station")
        {
            Description = "Take each weather file for a station of its own: print each, then all together.",
        };
        var plot = new Option<FileInfo?>("--plot") { Description = "SVG file for the reliability plot." };
        var output = Printing.Output();
        var command = new Command(
            "backtest", "Say how good the chances of planned tasks would have been in past years, from files.");
        input.AddTo(command);
        foreach (var option in new Option[] { lead, each, packs, plot, output })
            command.Add(option);
        command.SetAction(result => Run(
            () => input.Read(result), result.GetValue(packs) ?? [], result.GetRequiredValue(lead),
            result.GetRequiredValue(each), result.GetValue(plot), result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(
        Func<EvaluationInput?> read, FileInfo[] files, int leadDays, bool eachStation, FileInfo? plot, bool asJson)
    {
        if (leadDays is < 1 or > MostLeadDays)
            return CommandLine.Refuse($"--lead-days '{leadDays}': 1 to {MostLeadDays}");
        if (plot is { Directory.Exists: false })
            return CommandLine.Refuse($"--plot '{plot}': a file in a folder that exists");
        var packs = PackFiles.Add(ShippedPacks.Read(), files, Console.Error);
        if (read() is not { } input || packs is not { } sound)
            return CommandLine.BadInput;

        var plan = BacktestPlan.Usual with { LeadDays = leadDays };
        var found = LookBack(eachStation ? OfEach(input) : [(null, input)], sound, plan);
        if (found.Find(one => one.Found.ByLead.Sum(lead => lead.Days) == 0) is { Found: not null } tooShort)
        {
            return CommandLine.Refuse(
                "--weather: a record of at least sixteen years of minimum and maximum temperatures"
                + (tooShort.Station is { } station ? $", which {station} is not" : ""));
        }
        var pooled = found.Aggregate(BacktestResult.None, (sum, one) => sum + one.Found);
        if (plot is not null)
            File.WriteAllText(plot.FullName, ReliabilityPlot.Of(pooled.Reliability, "How often the chances came true"));
        if (asJson)
            Printing.AsJson(Console.Out, BacktestOutput.Plain(pooled, eachStation ? found : []));
        else
            BacktestOutput.Write(Console.Out, pooled, eachStation ? found : []);
        return 0;
    }

    private static IEnumerable<(string? Station, EvaluationInput Input)> OfEach(EvaluationInput input) =>
        input.Stations.Select(station => ((string?)station.StationId, input with { Weather = station.Series }));

    private static List<StationBacktest> LookBack(
        IEnumerable<(string? Station, EvaluationInput Input)> inputs, ImmutableArray<RulePack> packs, BacktestPlan plan)
    {
        var sites = inputs.Select(one => (one.Station, Sites: one.Input.BacktestSites().ToArray())).ToList();
        var (done, all) = (0, sites.Sum(one => one.Sites.Length));
        var progress = new SlowProgress(Console.Error, TimeProvider.System);
        return sites.ConvertAll(one => new StationBacktest(
            one.Station,
            one.Sites.Aggregate(BacktestResult.None, (sum, site) =>
            {
                var found = sum + Backtest.Of(site, packs, plan);
                progress.Report(++done, all, "parcels");
                return found;
            })));
    }
}
