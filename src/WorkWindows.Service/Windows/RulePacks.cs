using System.Collections.Immutable;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Windows;

/// <summary>The rule packs that tasks are evaluated with, and their texts, read once at the start.</summary>
public sealed class RulePacks
{
    public RulePacks()
    {
        Packs = ShippedPacks.Read();
        Texts = ShippedPacks.Texts().ToImmutableDictionary(text => Engine.Rules.Reading.RulePackReader.Read(text).Hash);
    }

    /// <summary>National first.</summary>
    public ImmutableArray<RulePack> Packs { get; }

    /// <summary>The text of each pack's file, by the pack's hash.</summary>
    public ImmutableDictionary<string, string> Texts { get; }
}
