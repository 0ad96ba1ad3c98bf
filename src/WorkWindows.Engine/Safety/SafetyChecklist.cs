using System.Collections.Immutable;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Safety;

/// <summary>What a crew wears, carries, does and stops for, put together from the traits of its work.</summary>
/// <remarks>
/// Days and states add to it: the <see cref="Rules.Effect.Requires"/> rules that hold on the day, such as blaze orange.
/// Sources: docs/rules/checklist.md.
/// </remarks>
public sealed record SafetyChecklist(Practice Practice, ImmutableArray<SafetyItem> Items)
{
    /// <summary>Every item there is, each once.</summary>
    public static ImmutableArray<SafetyItem> AllItems { get; } =
        [.. EverybodyItems.All, .. SawItems.All, .. FellingItems.All, .. OtherWorkItems.All];

    /// <returns>
    /// The items that go with the practice, by kind and within a kind from the general to the special; never empty.
    /// </returns>
    public static SafetyChecklist For(Practice practice) =>
        new(practice, [.. AllItems.Where(item => item.GoesWith(practice)).OrderBy(item => item.Kind)]);
}
