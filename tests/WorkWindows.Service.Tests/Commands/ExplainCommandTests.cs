using System.Text.Json;

namespace WorkWindows.Service.Tests.Commands;

public sealed class ExplainCommandTests
{
    private static readonly string[] Files =
    [
        "--parcels", Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson"),
        "--tasks", Path.Combine(ProjectFiles.Root, "docs/samples/tasks.csv"),
        "--weather", ProjectFiles.Reference("stations/dly/USC00368449.dly"),
        "--weather", ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz"),
    ];

    [Fact]
    public async Task Explain_GivesTheRuleThatDecides_ItsValueLimitMarginBasisAndSource_AndWhenItLetsGo()
    {
        var day = await JsonAsync("2004-02-03");
        var rule = day.GetProperty("deciding").EnumerateArray().Single();
        var finding = rule.GetProperty("findings").EnumerateArray().Single();

        Assert.Equal("closed", Text(day, "state"));
        Assert.Equal("hinge.cold-run", Text(rule, "rule"));
        // The station's file holds -144, -122 and -111 tenths of °C for 1 to 3 February: 6, 10 and 12 °F.
        Assert.Equal("12 °F", Text(finding, "value"));
        Assert.Equal("below 20 °F for 3 days in a row", Text(finding, "limit"));
        Assert.StartsWith("past the limit by 8 °F", Text(finding, "margin"), StringComparison.Ordinal);
        Assert.Equal("observed", Text(finding, "basis"));
        Assert.Equal("common practice", Text(rule, "authority"));
        Assert.Equal("2004-02-04", Text(rule, "letsGoOn"));
        Assert.NotEmpty(Text(rule, "source"));
    }

    [Fact]
    public async Task Explain_GivesTheSingleInputsThatWouldChangeTheDay()
    {
        var change = (await JsonAsync("2004-02-03")).GetProperty("changes").EnumerateArray()
            .Single(change => Text(change, "what") == "minimum temperature");

        Assert.Equal(("12 °F", "at least 20 °F"), (Text(change, "is"), Text(change, "wouldBe")));
        Assert.NotEqual("closed", Text(change, "state"));
    }

    [Fact]
    public async Task Explain_WritesPlainTextWithTheCautions()
    {
        var (exit, output, error) = await Executable.RunAsync(Arguments("2004-02-03"));

        Assert.Equal((0, ""), (exit, error));
        Assert.StartsWith(
            "fox-hinge on fox-north, Tue 3 Feb 2004: closed\n\nDecided by:\n", output, StringComparison.Ordinal);
        Assert.Contains("    Lets go on Wed 4 Feb 2004\n", output, StringComparison.Ordinal);
        Assert.Contains("If in doubt, stop.", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Explain_SaysThatADayIsUnknown_WhereTheWeatherEnds()
    {
        var day = await JsonAsync("2031-02-03");

        Assert.Equal("unknown", Text(day, "state"));
        Assert.All(day.GetProperty("deciding").EnumerateArray(),
            rule => Assert.Contains("A value that it needs is not known.",
                rule.GetProperty("doubts").EnumerateArray().Select(doubt => doubt.GetString())));
    }

    [Fact]
    public async Task Explain_Warns_WhenTheDayLiesOutsideTheRecord()
    {
        var (exit, _, error) = await Executable.RunAsync(Arguments("2031-02-03"));

        Assert.Equal(0, exit);
        Assert.Matches("^The weather files reach from [0-9-]+ to [0-9-]+; days outside have no readings.\n$", error);
    }

    [Theory]
    [InlineData("Dune Woods", "closed")]
    [InlineData("Lake Woods", "unknown")]
    [InlineData(null, "unknown")]
    public async Task Explain_AsksWhoPlansTheTask_WhereARuleDoes(string? organization, string state)
    {
        var pack = Path.GetTempFileName();
        await File.WriteAllTextAsync(pack, """
            pack: dune
            version: "1"
            title: Dune
            level: organization
            rules:
              - id: dune.rest
                title: Rest
                effect: closes
                scope: { organizations: [Dune Woods] }
                when: { calendar: { on: 02-20 } }
                because: We rest on this day.
                authority: common-practice
                source: { title: "common practice, no source" }
            """);
        string[] who = organization is null ? [] : ["--organization", organization];

        var (exit, output, _) = await Executable.RunAsync(
            [.. Arguments("2031-02-20"), "--packs", pack, .. who, "--output", "json"]);

        Assert.Equal(0, exit);
        Assert.Equal(state, Text(JsonDocument.Parse(output).RootElement, "state"));
        Assert.Equal(
            organization is null,
            output.Contains("Nobody has said who plans the task", StringComparison.Ordinal));
        File.Delete(pack);
    }

    [Fact]
    public async Task Explain_NamesTheTasks_WhenItKnowsNoneOfTheKey()
    {
        var (exit, _, error) = await Executable.RunAsync(["explain", .. Files, "--task", "fox", "--on", "2004-02-03"]);

        Assert.Equal(2, exit);
        Assert.StartsWith("--task 'fox': a task of the file: fox-hinge, fox-tie, ", error, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> JsonAsync(string day)
    {
        var (exit, output, _) = await Executable.RunAsync([.. Arguments(day), "--output", "json"]);
        Assert.Equal(0, exit);
        return JsonDocument.Parse(output).RootElement;
    }

    private static string[] Arguments(string day) => ["explain", .. Files, "--task", "fox-hinge", "--on", day];

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;
}
