using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads a rule pack from the text of its file (docs/rule-packs.md).</summary>
public static class RulePackReader
{
    /// <summary>The pack that a file's text states, by itself: what it says of other packs is not looked at.</summary>
    /// <exception cref="PackException">Anything in the file is wrong: every fault is listed.</exception>
    public static RulePack Read(string text) => Read(text, null);

    /// <summary>The pack that a file's text states, below other packs.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="above">
    /// The packs that it will stand with; those of the same level or a lower one are not above it.
    /// </param>
    /// <exception cref="PackException">Anything in the file is wrong: every fault is listed.</exception>
    public static RulePack Read(string text, ImmutableArray<RulePack>? above) => Read(text, above, null);

    /// <summary>The pack that a file's text states, where its key and level are known beforehand.</summary>
    /// <exception cref="PackException">
    /// Anything in the file is wrong, or it is another pack: every fault is listed.
    /// </exception>
    public static RulePack Read(string text, ImmutableArray<RulePack>? above, PackPlace? place)
    {
        var faults = new List<PackFault>();
        var pack = PackText.Root(text, faults) is { } root ? Pack(root, text, above, place) : null;
        return pack is not null && faults.Count == 0
            ? pack
            : throw new PackException([.. faults.OrderBy(fault => (fault.Line, fault.Column))]);
    }

    /// <summary>SHA-256 of a file's text with line ends as LF, lower-case hexadecimal.</summary>
    public static string HashOf(string text) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n"))));

    private static RulePack? Pack(Entry root, string text, ImmutableArray<RulePack>? above, PackPlace? place)
    {
        if (root.AsMapping("pack", "version", "title", "level", "states", "rules") is not { } mapping)
            return null;
        var id = mapping.Required("pack", "a key such as mi")?.MachineKey();
        var version = mapping.Required("version", "a version such as \"2026.1\"")?.Sentence();
        var title = mapping.Required("title", "a few words for people")?.Sentence();
        var states = ScopeReading.States(mapping["states"]);
        var level = mapping["level"] is { } named ? named.OneOf(Words.Levels)
            : states.IsEmpty ? PackLevel.National
            : PackLevel.State;
        if (level == PackLevel.State && !mapping.Has("states"))
            mapping.Required("states", "the state or states that it is about, such as [MI]");
        if (id is not null && place is not null && id != place.Id)
            mapping["pack"]!.Refuse(place.Id);
        if (level is not null && place is not null && level != place.Level)
        {
            var wanted = Words.Kebab($"{place.Level}");
            (mapping["level"] ?? mapping.Required("level", wanted))?.Refuse(wanted);
        }
        var stack = new RuleStack(id, level, above);
        var rules = mapping.Required("rules", "a list of rules")?.Items()
            .Select(item => RuleReading.Read(item, states, stack)).OfType<Rule>().ToArray() ?? [];
        return id is null || version is null || title is null || level is null
            ? null
            : new(id, version, title, level.Value, HashOf(text), [.. rules]);
    }
}
