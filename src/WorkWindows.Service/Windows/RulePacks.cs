using System.Collections.Immutable;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Service.Windows;

/// <summary>The rule packs that come with the service, and their texts, read once at the start.</summary>
public sealed class RulePacks
{
    public RulePacks()
    {
        string[] texts = [.. ShippedPacks.Texts()];
        Packs = PackStack.Read(texts);
        Texts = texts.ToImmutableDictionary(RulePackReader.HashOf);
    }

    /// <summary>National first.</summary>
    public ImmutableArray<RulePack> Packs { get; }

    /// <summary>The text of each pack's file, by the pack's hash.</summary>
    public ImmutableDictionary<string, string> Texts { get; }

    public RulePack? Find(string packId) => Packs.FirstOrDefault(pack => pack.Id == packId);
}
