using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>What docs/rule-packs.md shows is what the reader does.</summary>
public class AuthoringGuideTests
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(ProjectFiles.Root, "docs", "rule-packs.md"));

    private static readonly string Example = Guide.Split("```yaml\n")[1].Split("```")[0];

    [Fact]
    public void Read_TakesTheGuidesExample() =>
        Assert.Equal(
            ["dune.oak-wilt", "dune.cold-run", "dune.quiet-week", "dune.march-agreed"],
            RulePackReader.Read(Example, ShippedPacks.Read()).Rules.Select(rule => rule.Id));

    [Fact]
    public void Read_AnswersAFaultInTheExample_AsTheGuideSays() =>
        Assert.Contains(
            Assert.Throws<PackException>(() => RulePackReader.Read(Example.Replace("15 degF\n", "15\n"))).Message,
            Guide, StringComparison.Ordinal);
}
