using System.Collections.Immutable;

namespace WorkWindows.Engine.Phenology;

/// <summary>The two published procedures of the Extended Spring Index.</summary>
public enum SpringIndexVariant
{
    /// <summary>Every day is processed (Allstadt et al. 2015): the one that the engine uses.</summary>
    Corrected,

    /// <summary>Days whose maximum is below 31 °F are left out whole (toolbox of Ault et al. 2015).</summary>
    Toolbox2015,
}

/// <summary>
/// The Extended Spring Index: first leaf and first bloom of a lilac and two honeysuckles, which stand for the start of
/// spring across the temperate United States. Source: docs/rules/spring-index.md.
/// </summary>
/// <param name="PlantLeafDays">
/// Day of the year on which each plant leafs: lilac 'Red Rothomagensis', honeysuckles 'Arnold Red' and 'Zabeli'; null
/// where the days do not suffice.
/// </param>
/// <param name="PlantBloomDays">The same for bloom.</param>
public sealed record SpringIndex(ImmutableArray<int?> PlantLeafDays, ImmutableArray<int?> PlantBloomDays)
{
    /// <summary>The days of a year that the index looks at; an event after them does not happen.</summary>
    public const int Days = 240;

    /// <summary>The day of the year of first leaf: the rounded mean of the plants, null unless all leaf.</summary>
    public int? LeafDay => Mean(PlantLeafDays);

    /// <summary>The day of the year of first bloom: the rounded mean of the plants, null unless all bloom.</summary>
    public int? BloomDay => Mean(PlantBloomDays);

    /// <summary>The index from days without gaps, such as those of a season under way.</summary>
    /// <param name="maxF">
    /// Daily maxima in °F from 1 January on, of which <see cref="Days"/> are looked at; NaN ends the days that can be
    /// used. Fill a season that is over with <see cref="SpringGaps"/> first.
    /// </param>
    /// <param name="minF">The minima of the same days.</param>
    /// <param name="latitudeDeg">North positive; the formulas are of the northern hemisphere.</param>
    /// <param name="variant">Which of the published procedures.</param>
    /// <exception cref="ArgumentException">Maxima and minima differ in number; the latitude is not 0 to 90.</exception>
    public static SpringIndex Over(
        ReadOnlySpan<double> maxF, ReadOnlySpan<double> minF, double latitudeDeg,
        SpringIndexVariant variant = SpringIndexVariant.Corrected)
    {
        if (maxF.Length != minF.Length)
            throw new ArgumentException($"{maxF.Length} maxima and {minF.Length} minima.", nameof(minF));
        if (latitudeDeg is not (>= 0 and <= 90))
            throw new ArgumentException($"{latitudeDeg}° is not a northern latitude.", nameof(latitudeDeg));

        var heat = SpringHeat.Daily(maxF, minF, latitudeDeg, variant);
        var leafs = ImmutableArray.CreateBuilder<int?>(SpringPlant.All.Length);
        var blooms = ImmutableArray.CreateBuilder<int?>(SpringPlant.All.Length);
        foreach (var plant in SpringPlant.All)
        {
            var leaf = plant.LeafDay(heat);
            leafs.Add(leaf);
            blooms.Add(leaf is { } start ? plant.BloomDay(heat, start) : null);
        }
        return new(leafs.MoveToImmutable(), blooms.MoveToImmutable());
    }

    private static int? Mean(ImmutableArray<int?> days) =>
        days.All(day => day is not null) ? (int)Math.Round(days.Average()!.Value) : null;
}
