using System.Collections.Immutable;

namespace WorkWindows.Engine.Rules;

/// <summary>The rule packs that come with the engine: the national ones first, then the states' by key.</summary>
public static class ShippedPacks
{
    /// <summary>The text of each pack's file.</summary>
    public static IEnumerable<string> Texts()
    {
        var assembly = typeof(ShippedPacks).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(
            name => name.EndsWith(".yaml", StringComparison.Ordinal)))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            yield return reader.ReadToEnd();
        }
    }

    public static ImmutableArray<RulePack> Read() => PackStack.Read(Texts());
}
