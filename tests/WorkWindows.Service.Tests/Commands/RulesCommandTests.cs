using System.Text.Json;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Service.Tests.Commands;

public sealed class RulesCommandTests : IDisposable
{
    private static readonly string[] Evaluation =
    [
        "--parcels", Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson"),
        "--tasks", Path.Combine(ProjectFiles.Root, "docs/samples/tasks.csv"),
        "--weather", ProjectFiles.Reference("stations/dly/USC00368449.dly"),
        "--weather", ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz"),
    ];

    // Closes the first week of February in Pennsylvania, where the winter's hinge cuts of the sample lie.
    private const string Pack =
        """
        pack: ridge
        version: "1"
        title: House rules of the ridge
        level: organization
        states: [PA]
        rules:
          - id: ridge.february
            title: No cuts in the first week of February
            effect: closes
            scope: { practices: [hinge-cut] }
            when:
              calendar: { from: 02-01, to: 02-07 }
            because: The crew is at its course.
            authority: common-practice
            source: { title: House rules }
            valid: { from: 2004, to: 2006 }
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("workwindows-rules-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Check_SumsUpASoundPack()
    {
        var file = await FileAsync("ridge.yaml", Pack);

        var (exit, output, error) = await Executable.RunAsync(["rules", "check", file, "--on", "2006-12-31"]);

        Assert.Equal((0, $"{file}: ridge 1, organization, 1 rule\n", ""), (exit, output, error));
    }

    [Fact]
    public async Task Check_WarnsLoudly_WhenTheValidYearsAreOver()
    {
        var file = await FileAsync("ridge.yaml", Pack);

        var (exit, _, error) = await Executable.RunAsync(["rules", "check", file, "--on", "2007-01-01"]);

        Assert.Equal(0, exit);
        Assert.StartsWith($"WARNING: {file}: ridge.february is out of date: its valid years ended in 2006.", error,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_NamesFileLineColumnKeyValueAndAcceptedForm_AndChecksTheOtherFilesToo()
    {
        var bad = await FileAsync(
            "bad.yaml", Pack.Replace("effect: closes", "effect: close").Replace("02-07", "02-30"));
        var sound = await FileAsync("ridge.yaml", Pack);

        var (exit, output, error) = await Executable.RunAsync(["rules", "check", bad, sound, "--on", "2006-01-01"]);

        Assert.Equal(2, exit);
        Assert.Equal(
            $"{bad}:9:13: rules[0].effect is 'close'; accepted: closes, limits, favours, requires, lifts; did you mean "
            + "'closes'?\n"
            + $"{bad}:12:36: rules[0].when.calendar.to is '02-30'; accepted: a month and day such as 08-01\n",
            error);
        Assert.StartsWith($"{sound}: ridge 1", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_ReadsAPackBelowThoseBeforeIt()
    {
        var above = await FileAsync("ridge.yaml", Pack);
        var below = await FileAsync("spring.yaml", Pack
            .Replace("pack: ridge", "pack: spring").Replace("ridge.feb", "spring.feb")
            .Replace("level: organization", "level: property")
            .Replace("effect: closes", "effect: lifts\n    lifts: ridge.february"));

        Assert.Equal(0, (await Executable.RunAsync(["rules", "check", above, below])).Exit);
        Assert.Equal(2, (await Executable.RunAsync(["rules", "check", below])).Exit);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    public async Task Rules_SaysSoInOneLine_WhenAFileIsNotThere(string command)
    {
        var (exit, output, error) = await Executable.RunAsync(["rules", command, "no-such-file.yaml"]);

        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith("no-such-file.yaml: Could not find file", error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task List_GivesTheShippedRulesAndThoseOfFiles_ForAStateAndAPractice()
    {
        var (exit, output, _) = await Executable.RunAsync(
        [
            "rules", "list", await FileAsync("ridge.yaml", Pack), "--state", "PA", "--practice", "hinge-cut",
            "--output", "json",
        ]);
        var rules = JsonDocument.Parse(output).RootElement.EnumerateArray()
            .ToDictionary(rule => rule.GetProperty("rule").GetString()!);

        Assert.Equal(0, exit);
        Assert.Contains("pa.oak-wilt.high", rules.Keys);
        Assert.Contains("hinge.cold-run", rules.Keys);
        Assert.DoesNotContain("mi.oak-wilt.high", rules.Keys);
        Assert.DoesNotContain("planting.roots", rules.Keys);
        Assert.Equal("2004 to 2006, OUT OF DATE", rules["ridge.february"].GetProperty("valid").GetString());
    }

    [Fact]
    public async Task List_PrintsATable()
    {
        var (exit, output, _) = await Executable.RunAsync(["rules", "list"]);

        Assert.Equal(0, exit);
        Assert.All(ShippedPacks.Read().SelectMany(pack => pack.Rules),
            rule => Assert.Contains($" {rule.Id} ", output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Diff_GivesTheDaysThatANewPackCloses_AndWhichRuleDoes()
    {
        var file = await FileAsync("ridge.yaml", Pack);

        var (exit, output, error) = await Executable.RunAsync(
        [
            "rules", "diff", "shipped", file, .. Evaluation, "--to", "2005-12-31", "--years", "2", "--output", "json",
        ]);
        var root = JsonDocument.Parse(output).RootElement;
        var hinge = root.GetProperty("tasks").EnumerateArray().Single(task => Text(task, "task") == "fox-hinge");
        var changes = hinge.GetProperty("changes").EnumerateArray().ToArray();

        Assert.Equal((0, ""), (exit, error));
        Assert.Equal("2004-01-01", Text(root, "from"));
        Assert.NotEmpty(changes);
        Assert.All(changes, change =>
        {
            Assert.InRange(Text(change, "from")[5..], "02-01", "02-07");
            Assert.InRange(Text(change, "to")[5..], "02-01", "02-07");
            Assert.Equal("closed", Text(change, "after"));
            Assert.Contains(
                "ridge.february", change.GetProperty("rules").EnumerateArray().Select(rule => rule.GetString()));
        });
        // No hinge is cut on the other parcels, and none of them lies in the state.
        Assert.All(root.GetProperty("tasks").EnumerateArray().Where(task => Text(task, "task") != "fox-hinge"),
            task => Assert.Equal(0, task.GetProperty("changes").GetArrayLength()));
        Assert.All(hinge.GetProperty("years").EnumerateArray(), year => Assert.InRange(
            year.GetProperty("workableDaysBefore").GetInt32() - year.GetProperty("workableDaysAfter").GetInt32(),
            0, 7));
    }

    [Fact]
    public async Task Diff_PutsAFileInThePlaceOfTheShippedPackOfItsKey()
    {
        var national = ShippedPacks.Texts().Single(text => RulePackReader.Read(text).Id == "us");
        var file = await FileAsync("us.yaml", national);

        var (exit, output, error) = await Executable.RunAsync(
            ["rules", "diff", "shipped", file, .. Evaluation, "--to", "2005-12-31", "--years", "1"]);

        Assert.Equal(
            (0, "2005-01-01 to 2005-12-31: 0 of 8 tasks change, 0 of 2920 days.\n", ""), (exit, output, error));
    }

    [Fact]
    public async Task Diff_PrintsTheRunsAndTheTotals()
    {
        var file = await FileAsync("ridge.yaml", Pack);

        var later = await FileAsync("later.yaml", Pack.Replace("02-07", "02-14"));

        var (exit, output, _) = await Executable.RunAsync(
            ["rules", "diff", file, later, .. Evaluation, "--to", "2004-12-31"]);

        Assert.Equal(0, exit);
        Assert.Contains("because of", output, StringComparison.Ordinal);
        Assert.Contains("workable before", output, StringComparison.Ordinal);
        Assert.Contains("1995-01-01 to 2004-12-31: ", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Diff_RefusesABadPack_AndComparesNothing()
    {
        var file = await FileAsync("bad.yaml", Pack.Replace("02-07", "7 February"));

        var (exit, output, error) = await Executable.RunAsync(["rules", "diff", "shipped", file, .. Evaluation]);

        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith($"{file}:12:36: ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Schema_PrintsTheSchema() =>
        Assert.Equal((0, RulePackSchema.Text(), ""), await Executable.RunAsync(["rules", "schema"]));

    [Fact]
    public async Task Evaluate_TakesAPackOfItsOwn()
    {
        var file = await FileAsync("ridge.yaml", Pack);

        var (exit, output, _) = await Executable.RunAsync(
        [
            "evaluate", .. Evaluation, "--from", "2004-02-01", "--to", "2004-02-07", "--packs", file,
            "--output", "json",
        ]);
        var hinge = JsonDocument.Parse(output).RootElement.EnumerateArray()
            .Single(task => Text(task, "task") == "fox-hinge");

        Assert.Equal(0, exit);
        Assert.Equal(7, hinge.GetProperty("season").GetProperty("days").GetProperty("closed").GetInt32());
    }

    private async Task<string> FileAsync(string name, string text)
    {
        var file = Path.Combine(folder.FullName, name);
        await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
        return file;
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;
}
