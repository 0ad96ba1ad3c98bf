using System.Collections.Immutable;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Engine.Rules;

/// <summary>Packs that stand together, higher ones first, then by key.</summary>
public static class PackStack
{
    /// <summary>Reads packs that stand together.</summary>
    /// <param name="texts">The texts of their files, in any order.</param>
    /// <exception cref="PackException">A file is wrong, by itself or beside the others.</exception>
    public static ImmutableArray<RulePack> Read(IEnumerable<string> texts)
    {
        var alone = texts.Select(text => (Text: text, Pack: RulePackReader.Read(text))).ToArray();
        var stack = InOrder(alone.Select(read => read.Pack));
        foreach (var (text, _) in alone)
            RulePackReader.Read(text, stack);
        return stack;
    }

    /// <summary>The packs with another one among them, in the place of the one of the same key.</summary>
    public static ImmutableArray<RulePack> With(this ImmutableArray<RulePack> stack, RulePack pack) =>
        InOrder(stack.Where(other => other.Id != pack.Id).Append(pack));

    public static ImmutableArray<RulePack> InOrder(IEnumerable<RulePack> packs) =>
        [.. packs.OrderBy(pack => pack.Level).ThenBy(pack => pack.Id, StringComparer.Ordinal)];
}
