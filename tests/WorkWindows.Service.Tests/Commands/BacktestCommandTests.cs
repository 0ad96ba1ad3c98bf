using System.Text.Json;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Service.Commands;

namespace WorkWindows.Service.Tests.Commands;

/// <summary>
/// Seventeen years of Minneapolis-St Paul airport: NOAA GHCN-Daily (Menne et al. 2012,
/// doi:10.7289/V5D21VHZ). How good the chances are is checked in docs/validation.md; here only that it can be asked
/// for.
/// </summary>
public sealed class BacktestCommandTests : IDisposable
{
    private static readonly string StateCollege = ProjectFiles.Reference("stations/dly/USC00368449.dly");
    private static readonly string Minneapolis = ProjectFiles.Reference("stations/dly/USW00014922.core.dly");
    private static readonly string Parcels = Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson");

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("workwindows-backtest-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Backtest_PrintsScoresReliabilityAndLeafOut_AndDrawsThePlot()
    {
        var plot = Path.Combine(folder.FullName, "reliability.svg");

        var (exit, output, error) = await Executable.RunAsync([.. Arguments(SeventeenYears()), "--plot", plot]);

        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("Brier score", output, StringComparison.Ordinal);
        Assert.Contains("chance told", output, StringComparison.Ordinal);
        Assert.Matches(@"Leaf-out, told \d+ times: between P10 and P90 in \d+ %", output);
        Assert.Contains("Left out, because the weather files do not have", output, StringComparison.Ordinal);
        Assert.StartsWith(
            "<svg", await File.ReadAllTextAsync(plot, TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backtest_GivesTheSameAsJson()
    {
        var (exit, output, _) = await Executable.RunAsync([.. Arguments(SeventeenYears()), "--output", "json"]);

        using var found = JsonDocument.Parse(output);
        Assert.Equal(0, exit);
        Assert.Equal([1, 2, 3], found.RootElement.GetProperty("byLead").EnumerateArray()
            .Select(lead => lead.GetProperty("leadDays").GetInt32()));
        Assert.InRange(found.RootElement.GetProperty("byLead")[0].GetProperty("brier").GetDouble(), 0.0001, 0.2);
    }

    [Fact]
    public async Task Backtest_LooksAtEachStation_AndAtAllOfThemTogether()
    {
        var (exit, output, _) = await Executable.RunAsync(
        [
            .. Arguments(SeventeenYears(), leadDays: "1"), "--weather", SeventeenYears("USC00210001"), "--each-station",
            "--output", "json",
        ]);

        using var found = JsonDocument.Parse(output);
        var stations = found.RootElement.GetProperty("stations").EnumerateArray().ToList();
        Assert.Equal(0, exit);
        Assert.Equal(["USW00014922", "USC00210001"], stations.Select(one => one.GetProperty("station").GetString()));
        Assert.Equal(
            stations.Sum(one => Days(one.GetProperty("found"))), Days(found.RootElement.GetProperty("together")));

        static int Days(JsonElement found) => found.GetProperty("byLead")[0].GetProperty("days").GetInt32();
    }

    [Fact]
    public void Write_NamesEachStation_AboveWhatWasFoundThere()
    {
        var text = new StringWriter();

        BacktestOutput.Write(
            text, BacktestResult.None, [new("USC00210001", BacktestResult.None), new(
                "USC00210002", BacktestResult.None)]);

        Assert.Matches("(?s)^USC00210001:.*Brier.*USC00210002:.*Brier.*2 stations together:.*Brier", text.ToString());
    }

    [Fact]
    public async Task Backtest_NamesTheStationWhoseRecordIsTooShort()
    {
        var (exit, _, error) = await Executable.RunAsync([.. Arguments(StateCollege), "--each-station"]);

        Assert.Equal(2, exit);
        Assert.EndsWith("temperatures, which USC00368449 is not\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backtest_RefusesARecordThatIsTooShort() => Assert.Equal(
        (2, "", "--weather: a record of at least sixteen years of minimum and maximum temperatures\n"),
        await Executable.RunAsync(Arguments(StateCollege)));

    [Theory]
    [InlineData("--lead-days", "0", "--lead-days '0': 1 to 366\n")]
    [InlineData(
        "--plot", "/no/such/folder/plot.svg", "--plot '/no/such/folder/plot.svg': a file in a folder that exists\n")]
    public async Task Backtest_RefusesWhatItCannotDo(string option, string value, string fault) => Assert.Equal(
        (2, "", fault), await Executable.RunAsync([.. Arguments(StateCollege, leadDays: null), option, value]));

    private string SeventeenYears(string station = "USW00014922")
    {
        var file = Path.Combine(folder.FullName, $"{station}.dly");
        File.WriteAllLines(file, File.ReadLines(Minneapolis)
            .Where(line => string.CompareOrdinal(line[11..15], "1998") >= 0 && line[17..21] is ("TMIN" or "TMAX"))
            .Select(line => station + line[station.Length..]));
        return file;
    }

    private string[] Arguments(string weather, string? leadDays = "3")
    {
        var tasks = Path.Combine(folder.FullName, "tasks.csv");
        File.WriteAllText(
            tasks, "task,parcel,practice,quantity,unit,crewSize\nfox-hinge,fox-north,hinge-cut,6.5,acres,3\n");
        string[] arguments = ["backtest", "--parcels", Parcels, "--tasks", tasks, "--weather", weather];
        return leadDays is null ? arguments : [.. arguments, "--lead-days", leadDays];
    }
}
