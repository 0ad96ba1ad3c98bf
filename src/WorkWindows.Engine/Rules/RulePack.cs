using System.Collections.Immutable;

namespace WorkWindows.Engine.Rules;

/// <summary>A versioned file of rules for a jurisdiction.</summary>
/// <param name="Id">Its key, lower case with hyphens.</param>
/// <param name="Version">Its version, such as 2026.1.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Level">Where it stands in the stack of packs.</param>
/// <param name="Hash">SHA-256 of the file's text with line ends as LF, lower-case hexadecimal.</param>
/// <param name="Rules">Its rules, in the order of the file.</param>
public sealed record RulePack(
    string Id, string Version, string Title, PackLevel Level, string Hash, ImmutableArray<Rule> Rules);

/// <summary>Where a pack stands: a lower one adds to a higher one, and may lift some of its rules.</summary>
public enum PackLevel
{
    National,
    State,
    Organization,
    Property,
}

/// <summary>What a file of rules must be: its key and level.</summary>
public sealed record PackPlace(string Id, PackLevel Level);
