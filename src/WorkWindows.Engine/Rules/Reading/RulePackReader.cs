using System.Security.Cryptography;
using System.Text;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads a rule pack from the text of its file (docs/rule-packs.md).</summary>
public static class RulePackReader
{
    /// <summary>The pack that a file's text states.</summary>
    /// <exception cref="PackException">Anything in the file is wrong: every fault is listed.</exception>
    public static RulePack Read(string text)
    {
        var faults = new List<PackFault>();
        var pack = Document(text, faults) is { } root ? Pack(root, text) : null;
        return pack is not null && faults.Count == 0
            ? pack
            : throw new PackException([.. faults.OrderBy(fault => (fault.Line, fault.Column))]);
    }

    private static Entry? Document(string text, List<PackFault> faults)
    {
        try
        {
            var stream = new YamlStream();
            stream.Load(new StringReader(text));
            if (stream.Documents is [var document])
                return new(document.RootNode, "", faults);
            faults.Add(new(1, 1, "file", $"{stream.Documents.Count} documents", "one YAML document"));
        }
        catch (YamlException e)
        {
            faults.Add(new(e.Start.Line, e.Start.Column, "file", e.Message, "well-formed YAML with each key once"));
        }
        return null;
    }

    private static RulePack? Pack(Entry root, string text)
    {
        if (root.AsMapping("pack", "version", "title", "states", "rules") is not { } mapping)
            return null;
        var id = mapping.Required("pack", "a key such as mi")?.Sentence();
        var version = mapping.Required("version", "a version such as \"2026.1\"")?.Sentence();
        var title = mapping.Required("title", "a few words for people")?.Sentence();
        var states = RuleReading.States(mapping["states"]);
        var ids = new HashSet<string>();
        var rules = mapping.Required("rules", "a list of rules")?.Items()
            .Select(item => RuleReading.Read(item, states, ids)).OfType<Rule>().ToArray() ?? [];
        return id is null || version is null || title is null ? null : new(id, version, title, Hash(text), [.. rules]);
    }

    private static string Hash(string text) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n"))));
}
