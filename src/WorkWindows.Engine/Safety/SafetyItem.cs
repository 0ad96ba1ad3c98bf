using System.Collections.Immutable;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Safety;

/// <summary>One line of a crew's checklist.</summary>
/// <param name="Id">Its key, lower case with hyphens; the rule's id where a rule asks for it.</param>
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
    /// <summary>What it consists of, where that is a list.</summary>
    public ImmutableArray<string> Parts { get; init; } = [];

    /// <summary>The practices it goes with, whatever their traits; empty where the traits decide.</summary>
    public ImmutableArray<string> Practices { get; init; } = [];

    /// <summary>It goes with parcels of which this has been noted, and no others.</summary>
    public SiteFlag? Flag { get; init; }

    /// <summary>All that it says, its parts included.</summary>
    public string Statement => Parts.IsEmpty ? Text : $"{Text} {string.Join("; ", Parts)}.";

    /// <summary>How binding it is and where it is stated, in a line.</summary>
    public string Cited => (Source.IsNone ? $"{Source}" : $"{Wording.Of(Authority)}: {Source}")
        + (FromMemory ? " (wording not checked against the document)" : "");

    internal bool GoesWith(SafetyScene scene) =>
        (Flag is not { } flag || scene.SiteFlags.Contains(flag))
        && (Practices.IsEmpty
            ? Traits == PracticeTraits.None || (Traits & scene.Practice.Traits) != 0
            : Practices.Contains(scene.Practice.Id));
}

/// <summary>The parts of a checklist, in the order a crew goes through them.</summary>
public enum SafetyItemKind
{
    /// <summary>What rules ask for on this day, at this place.</summary>
    Today,

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
    private const string NoDocument = "common practice, no source";

    /// <summary>Nobody has published it.</summary>
    public static SafetySource None { get; } = new(NoDocument);

    internal bool IsNone => Document.StartsWith(NoDocument, StringComparison.Ordinal);

    public override string ToString() => Paragraph is null ? Document : $"{Document}, {Paragraph}";
}
