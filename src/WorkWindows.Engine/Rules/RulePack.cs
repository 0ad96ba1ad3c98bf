using System.Collections.Immutable;

namespace WorkWindows.Engine.Rules;

/// <summary>A versioned file of rules for a jurisdiction.</summary>
/// <param name="Id">Its key, lower case with hyphens.</param>
/// <param name="Version">Its version, such as 2026.1.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Hash">SHA-256 of the file's text with line ends as LF, lower-case hexadecimal.</param>
/// <param name="Rules">Its rules, in the order of the file.</param>
public sealed record RulePack(string Id, string Version, string Title, string Hash, ImmutableArray<Rule> Rules);
