using System.Text.Json;

namespace WorkWindows.Service.Tests.Commands;

public sealed class EvaluateCommandTests : IDisposable
{
    private static readonly string StateCollege = ProjectFiles.Reference("stations/dly/USC00368449.dly");
    private static readonly string Minneapolis = ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz");
    private static readonly string Parcels = Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson");
    private static readonly string Tasks = Path.Combine(ProjectFiles.Root, "docs/samples/tasks.csv");

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("workwindows-evaluate-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Evaluate_SaysUnknownNeverOpen_WhenTheStationReportsNoWind()
    {
        var hingeCut = (await JsonAsync([StateCollege])).Single(task => Text(task, "task") == "fox-hinge");

        Assert.Equal(0, hingeCut.GetProperty("season").GetProperty("windows").GetArrayLength());
        Assert.True(hingeCut.GetProperty("season").GetProperty("days").GetProperty("unknown").GetInt32() > 0);
    }

    [Fact]
    public async Task Evaluate_GivesWindowsInTheDormantSeason_WhenASecondStationReportsWind()
    {
        var hingeCut = (await JsonAsync([StateCollege, Minneapolis])).Single(task => Text(task, "task") == "fox-hinge");
        var windows = hingeCut.GetProperty("season").GetProperty("windows").EnumerateArray()
            .Select(window => (From: Text(window, "from"), To: Text(window, "to"))).ToArray();

        Assert.NotEmpty(windows);
        // From 25 January to the last day before the oak wilt dates of Pennsylvania, and not in August either: the
        // stand has oaks.
        Assert.All(windows, window => Assert.InRange(window.From, "2004-01-25", "2004-03-31"));
        Assert.All(windows, window => Assert.InRange(window.To, window.From, "2004-03-31"));
    }

    [Fact]
    public async Task Evaluate_CountsEveryDayOfTheYearOnce() =>
        Assert.All(await JsonAsync([StateCollege]), task => Assert.Equal(
            366, // 2004 is a leap year
            task.GetProperty("season").GetProperty("days").EnumerateObject().Sum(count => count.Value.GetInt32())));

    [Fact]
    public async Task Evaluate_PrintsATableAndTheCautions()
    {
        var (exit, output, error) = await Executable.RunAsync(Arguments([StateCollege]));

        Assert.Equal(
            (0, "The weather files report no wind or no gusts, so that days of felling and saw work are unknown.\n"),
            (exit, error));
        Assert.Contains("fox-hinge", output, StringComparison.Ordinal);
        Assert.Contains("not known: sustained wind, gusts", output, StringComparison.Ordinal);
        Assert.Contains("Alerts of weather services are not part of station records", output, StringComparison.Ordinal);
        Assert.Contains("If in doubt, stop.", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--weather", "", "station.dly: file 'empty'")]
    [InlineData("--weather", "{\"type\":\"FeatureCollection\"}", "station.dly: line 1: ")]
    [InlineData("--tasks", "task,parcel,practice,quantity,unit,crewSize\nT-1,fox-north,hinge,2,acres,2\n",
        "tasks.csv: line 2: T-1: practice 'hinge': ")]
    [InlineData("--tasks", "task,parcel,practice,quantity,unit,crewSize,deadline\nT-1,fox-north,hinge-cut,2,acres,2,2025-02-29\n",
        "tasks.csv: line 2: T-1: deadline '2025-02-29': ")]
    [InlineData("--parcels", "{\"type\":\"FeatureCollection\",\"features\":[]}", "parcels.geojson: ")]
    public async Task Evaluate_RefusesABadFile_WithOneClearLine(string option, string content, string expected)
    {
        var name = option switch { "--weather" => "station.dly", "--tasks" => "tasks.csv", _ => "parcels.geojson" };
        var file = Path.Combine(folder.FullName, name);
        await File.WriteAllTextAsync(file, content, TestContext.Current.CancellationToken);

        var (exit, output, error) = await Executable.RunAsync(Replaced(option, file));

        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith(expected, error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData("--from", "2004-02-30", "--from '2004-02-30': a date such as 2024-01-31")]
    [InlineData("--to", "2003-12-31", "--to '2003-12-31': a day that is not before --from")]
    [InlineData("--from", "", "--from '': a date such as 2024-01-31")]
    [InlineData("--parcels", "no-such-file.geojson", "no-such-file.geojson: Could not find file")]
    public async Task Evaluate_RefusesABadOption_WithOneClearLine(string option, string value, string expected)
    {
        var (exit, _, error) = await Executable.RunAsync(Replaced(option, value));

        Assert.Equal(2, exit);
        Assert.StartsWith(expected, error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd().Split('\n'));
    }

    private static async Task<JsonElement[]> JsonAsync(string[] weather)
    {
        var (exit, output, _) = await Executable.RunAsync([.. Arguments(weather), "--output", "json"]);
        Assert.Equal(0, exit);
        return [.. JsonDocument.Parse(output).RootElement.EnumerateArray()];
    }

    private static string[] Arguments(string[] weather) =>
    [
        "evaluate", "--parcels", Parcels, "--tasks", Tasks, "--from", "2004-01-01", "--to", "2004-12-31",
        .. weather.SelectMany(file => new[] { "--weather", file }),
    ];

    private static string[] Replaced(string option, string value)
    {
        var arguments = Arguments([StateCollege]);
        arguments[Array.IndexOf(arguments, option) + 1] = value;
        return arguments;
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;
}
