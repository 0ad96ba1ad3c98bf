namespace WorkWindows.Service.Tests.Commands;

/// <summary>What the documentation shows of the commands is what they print.</summary>
public sealed class GuideTests : IDisposable
{
    private const string Indent = "   ";

    private static readonly string Guide = File.ReadAllText(Path.Combine(ProjectFiles.Root, "docs/rule-packs.md"));

    private static readonly string[] Evaluation =
    [
        "--parcels", Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson"),
        "--tasks", Path.Combine(ProjectFiles.Root, "docs/samples/tasks.csv"),
        "--weather", ProjectFiles.Reference("stations/dly/USC00368449.dly"),
        "--weather", ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz"),
    ];

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("workwindows-guide-");

    private static string FirstRule => Guide.Split("```yaml\n")[2].Split("```")[0][Indent.Length..]
        .Replace($"\n{Indent}", "\n", StringComparison.Ordinal);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Check_AnswersTheSlipOfTheFirstRule_AsTheGuideSays()
    {
        Assert.Contains("below: 10 degF", FirstRule, StringComparison.Ordinal);
        var slip = FirstRule.Replace("below: 10 degF", "below: 10", StringComparison.Ordinal);

        var (_, _, error) = await Executable.RunAsync(["rules", "check", await RidgeAsync(slip)]);

        AssertShown(error, Guide);
    }

    [Fact]
    public async Task Check_TakesTheFirstRule_AsTheGuideSays() =>
        AssertShown((await Executable.RunAsync(["rules", "check", await RidgeAsync(FirstRule)])).Output, Guide);

    [Fact]
    public async Task Diff_PrintsWhatTheGuideShows() =>
        AssertShown((await Executable.RunAsync(
        [
            "rules", "diff", "shipped", await RidgeAsync(FirstRule), .. Evaluation,
            "--to", "2005-12-31", "--years", "2",
        ])).Output, Guide);

    [Fact]
    public async Task Explain_PrintsWhatTheCommandLinePageShows()
    {
        var page = await File.ReadAllTextAsync(
            Path.Combine(ProjectFiles.Root, "docs/command-line.md"), TestContext.Current.CancellationToken);
        var shown = page.Split("```\nfox-hinge")[1].Split("\n```")[0];

        var (_, output, _) = await Executable.RunAsync(
            ["explain", .. Evaluation, "--task", "fox-hinge", "--on", "2004-02-03"]);

        Assert.StartsWith($"fox-hinge{shown}\n", output, StringComparison.Ordinal);
    }

    private async Task<string> RidgeAsync(string text)
    {
        var file = Path.Combine(folder.FullName, "ridge.yaml");
        await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
        return file;
    }

    private void AssertShown(string printed, string page)
    {
        var shown = page.Split('\n').Select(line => line.Trim()).ToHashSet();
        var lines = printed.Replace($"{folder.FullName}/", "", StringComparison.Ordinal).Split('\n')
            .Select(line => line.Trim()).Where(line => line.Length > 0).ToArray();
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.Contains(line, shown));
    }
}
