using System.Globalization;
using NodaTime;
using Spectre.Console;
using WorkWindows.Engine.Chances.Verification;

namespace WorkWindows.Service.Commands;

/// <summary>What a look back found at a station; its id is null where the files were put together to one.</summary>
internal sealed record StationBacktest(string? Station, BacktestResult Found);

/// <summary>What a look back found, as tables with a plot in characters, or as plain data for JSON.</summary>
internal static class BacktestOutput
{
    /// <summary>Characters from 0 to 100 %.</summary>
    private const int PlotWidth = 40;

    private static readonly int[] ShownLeads = [1, 2, 3, 5, 7, 10, 14, 21, 30, 45, 60, 90, 180, 366];

    /// <param name="output">Where to.</param>
    /// <param name="pooled">What was found in all.</param>
    /// <param name="stations">
    /// What was found at each station, to be printed first; none to print the whole alone.
    /// </param>
    public static void Write(TextWriter output, BacktestResult pooled, IReadOnlyCollection<StationBacktest> stations)
    {
        foreach (var (station, found) in stations)
        {
            output.WriteLine($"{station}:");
            Write(output, found);
            output.WriteLine();
        }
        if (stations.Count > 0)
            output.WriteLine($"{stations.Count} stations together:");
        Write(output, pooled);
    }

    private static void Write(TextWriter output, BacktestResult found)
    {
        Printing.Write(output, Leads(found));
        Printing.Write(output, Reliability(found));
        if (found.LeafOut.Length > 0)
            output.WriteLine(LeafOut(found));
        if (found.LeftOut.Length > 0)
        {
            output.WriteLine(
                "Left out, because the weather files do not have what they ask for: "
                + $"{string.Join(", ", found.LeftOut)}.");
        }
    }

    /// <inheritdoc cref="Write(TextWriter, BacktestResult, IReadOnlyCollection{StationBacktest})" path="/param"/>
    public static object Plain(BacktestResult pooled, IReadOnlyCollection<StationBacktest> stations) =>
        stations.Count == 0
            ? Plain(pooled)
            : new
            {
                Stations = stations.Select(one => new { one.Station, Found = Plain(one.Found) }),
                Together = Plain(pooled),
            };

    private static object Plain(BacktestResult found) => new
    {
        ByLead = found.ByLead.Select((score, index) => new
        {
            LeadDays = index + 1,
            score.Days,
            score.Brier,
            score.BrierOfClimatology,
            score.Skill,
            score.SkillOverSmoothed,
        }).Where(lead => lead.Days > 0),
        Reliability = found.Reliability.Where(bin => bin.Days > 0)
            .Select(bin => new { bin.Days, bin.Chance, bin.Share }),
        found.LeafOut,
        found.LeftOut,
    };

    private static Table Leads(BacktestResult found)
    {
        var table = Printing.Table(
            "days ahead", "days", "Brier score", "of climatology", "skill", "over smoothed climatology");
        foreach (var lead in ShownLeads.Where(lead => lead <= found.ByLead.Length))
        {
            var score = found.ByLead[lead - 1];
            table.Add($"{lead}", $"{score.Days}", Number(score.Brier), Number(score.BrierOfClimatology),
                Number(score.Skill), Number(score.SkillOverSmoothed));
        }
        return table;
    }

    private static Table Reliability(BacktestResult found)
    {
        var table = Printing.Table("chance told", "days", "came true", "0 %  (| told, # came true)  100 %");
        foreach (var bin in found.Reliability.Where(bin => bin.Days > 0))
            table.Add($"{bin.Chance:0 %}", $"{bin.Days}", $"{bin.Share:0 %}", Plot(bin));
        return table;
    }

    private static string Plot(ReliabilityBin bin)
    {
        var cells = new string('.', PlotWidth + 1).ToCharArray();
        cells[(int)Math.Round(bin.Chance * PlotWidth)] = '|';
        cells[(int)Math.Round(bin.Share * PlotWidth)] = '#';
        return new(cells);
    }

    private static string LeafOut(BacktestResult found)
    {
        var held = found.LeafOut.Count(spring => spring.P10 <= spring.Came && spring.Came <= spring.P90);
        var missed = found.LeafOut.Average(spring => Math.Abs(Period.DaysBetween(spring.P50, spring.Came)));
        return string.Create(CultureInfo.InvariantCulture,
            $"Leaf-out, told {found.LeafOut.Length} times: between P10 and P90 in "
            + $"{(double)held / found.LeafOut.Length:0 %}, {missed:0.0} days from P50 in the mean.");
    }

    private static string Number(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);
}
