using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Safety;

/// <summary>One line of a crew's checklist.</summary>
/// <param name="Id">Its key, lower case with hyphens.</param>
/// <param name="Text">What to do, in the imperative.</param>
/// <param name="Kind">Where it stands in the list.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="Authority">How binding it is for an employer in any state.</param>
/// <param name="Traits">It goes with practices that have any of these; <c>None</c> with every practice.</param>
/// <param name="FromMemory">
/// Its wording or paragraph number has not been checked against the document; docs/rules/checklist.md says which.
/// </param>
public sealed record SafetyItem(
    string Id,
    string Text,
    SafetyItemKind Kind,
    SafetySource Source,
    Authority Authority,
    PracticeTraits Traits = PracticeTraits.None,
    bool FromMemory = false)
{
    public bool GoesWith(Practice practice) => Traits == PracticeTraits.None || (Traits & practice.Traits) != 0;
}

/// <summary>The parts of a checklist, in the order a crew goes through them.</summary>
public enum SafetyItemKind
{
    Wear,
    Carry,
    Do,

    /// <summary>When to stop and leave.</summary>
    Stop,
}

/// <summary>Where a checklist item is stated.</summary>
/// <param name="Document">The document.</param>
/// <param name="Paragraph">Paragraph, table or page, or null.</param>
public sealed record SafetySource(string Document, string? Paragraph = null)
{
    public override string ToString() => Paragraph is null ? Document : $"{Document}, {Paragraph}";
}
