using System.Collections.Immutable;

namespace WorkWindows.Engine.Stands.Suitability;

/// <summary>
/// What a hinge cut keeps within. No agency or study names these: all are common practice, no source, save where it is
/// said, and each can be set by the organization.
/// </summary>
/// <remarks>Source: docs/rules/stands.md.</remarks>
public sealed record HingeLimits
{
    /// <summary>Up to this diameter a stem bends without splitting, inches.</summary>
    public double EasyDbhIn { get; init; } = 6;

    /// <summary>Up to this diameter it may be done with care, inches; above it never.</summary>
    public double LargestDbhIn { get; init; } = 8;

    /// <summary>The largest cherry or red maple, inches: they snap when they are larger.</summary>
    public double LargestBrittleDbhIn { get; init; } = 4;

    /// <summary>More cover than this above the hinges is a closed canopy, percent.</summary>
    public double ClosedCanopyPercent { get; init; } = 60;

    /// <summary>The least cover that Indiana bats' summer habitat keeps, percent (guidance, docs/rules/bats.md).</summary>
    public double BatCoverPercent { get; init; } = 60;

    /// <summary>A pocket of hinged trees, acres.</summary>
    public ValueRange PocketAcres { get; init; } = new(0.25, 0.5);

    /// <summary>What the organization says of species, by name as in the catalogue, instead of the usual; sizes hold for all.</summary>
    public ImmutableSortedDictionary<string, Fit> Species { get; init; } = ImmutableSortedDictionary<string, Fit>.Empty;

    /// <summary>The height of the cut, feet: about the hip, and never at the face. Sources differ between 3 and 6 ft.</summary>
    public ValueRange CutHeightFt { get; init; } = new(3, 4);
}
