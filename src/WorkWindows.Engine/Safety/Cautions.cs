using System.Collections.Immutable;

namespace WorkWindows.Engine.Safety;

/// <summary>What stands beside every answer, notice and checklist.</summary>
public static class Cautions
{
    /// <summary>Whole sentences, in the order in which they are shown.</summary>
    public static ImmutableArray<string> Usual { get; } =
    [
        "An open day is not an order to cut: dates, forecasts and rules can be wrong, and nobody here sees your trees.",
        "Local codes, permits and contracts come first.",
        "Herbicide, fire and other licensed work is for people who hold the licence.",
        "The crew on the ground decides. If in doubt, stop.",
    ];
}
