using System.Text.RegularExpressions;
using WorkWindows.Engine.Rules;
using WorkWindows.Tests;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>docs/rules names every shipped rule, and none that is not shipped.</summary>
public partial class RulePagesTests
{
    private static readonly HashSet<string> Shipped =
        [.. ShippedPacks.Read().SelectMany(pack => pack.Rules).Select(rule => rule.Id)];

    private static readonly HashSet<string> Named =
    [
        .. Directory.GetFiles(Path.Combine(ProjectFiles.Root, "docs", "rules"), "*.md")
            .SelectMany(page => RuleId().Matches(File.ReadAllText(page)).Select(match => match.Groups[1].Value)),
    ];

    [Fact]
    public void Pages_NameEveryRule() => Assert.Empty(Shipped.Except(Named).Order(StringComparer.Ordinal));

    [Fact]
    public void Pages_NameNoRuleThatIsNotShipped()
    {
        var families = Shipped.Select(id => id.Split('.')[0]).ToHashSet();
        Assert.Subset(Shipped, Named.Where(id => families.Contains(id.Split('.')[0])).ToHashSet());
    }

    [GeneratedRegex("`([a-z-]+(?:\\.[a-z-]+)+)`")]
    private static partial Regex RuleId();
}
