using System.Collections.Immutable;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands.Crowns;

namespace WorkWindows.Engine.Stands;

/// <summary>The stems of one species and size on an acre.</summary>
/// <param name="Species">The species.</param>
/// <param name="DbhIn">Diameter at breast height, inches: of a class its middle.</param>
/// <param name="StemsPerAcre">How many.</param>
public sealed record StemClass(Species Species, double DbhIn, double StemsPerAcre)
{
    /// <summary>The ends of the class, inches; null for stems of one diameter.</summary>
    public ValueRange? RangeIn { get; init; }

    /// <summary>The diameters that limits are held against, inches: both ends of a class.</summary>
    public IEnumerable<double> Ends => RangeIn is { } range ? [range.Low, range.High] : [DbhIn];
}

/// <summary>An inventory of trees, an acre.</summary>
/// <remarks>Source: docs/rules/stands.md.</remarks>
/// <param name="Classes">Its stems; none where nothing stands.</param>
/// <param name="Crowns">What crowns are worked out with.</param>
public sealed record Stand(ImmutableArray<StemClass> Classes, CrownSite Crowns)
{
    private const double LimitOfInches = 10;
    private const double Reineke = 1.605;

    public double StemsPerAcre => Classes.Sum(stems => stems.StemsPerAcre);

    public double BasalAreaFt2PerAcre => Sum(TreeFormulas.BasalAreaFt2);

    /// <summary>The diameter of the tree of mean basal area, inches; null where nothing stands.</summary>
    public double? QuadraticMeanDiameterIn =>
        StemsPerAcre > 0 ? Math.Sqrt(BasalAreaFt2PerAcre / StemsPerAcre / TreeFormulas.BasalAreaFt2(1)) : null;

    /// <summary>Stand density index (Reineke 1933, from memory): as many stems of 10 in would be as crowded; 0 for none.</summary>
    public double DensityIndex => QuadraticMeanDiameterIn is { } mean
        ? StemsPerAcre * Math.Pow(mean / LimitOfInches, Reineke)
        : 0;

    /// <summary>Crown competition factor, percent: 100 where open-grown crowns would just cover the ground.</summary>
    public double CrownCompetitionPercent => Sum(TreeFormulas.MaximumCrownAreaPercent);

    /// <summary>Stocking of upland oak forest, percent of the A-level.</summary>
    public double StockingPercent => Sum(TreeFormulas.GingrichStockingPercent);

    /// <summary>The sum of all crowns, percent of the ground; a range where a species has no equation of its own.</summary>
    public ValueRange CrownAreaPercent => Classes.Aggregate(ValueRange.Of(0), (sum, stems) =>
        sum + (CrownWidths.ForestGrownFt(stems.Species, stems.DbhIn, Crowns).Through(TreeFormulas.CrownAreaPercent)
            * stems.StemsPerAcre));

    /// <summary>The share of the ground under crowns that overlap at random, percent.</summary>
    public ValueRange CanopyCoverPercent => CrownAreaPercent.Through(CanopyCover.OfCrownAreaPercent);

    /// <summary>What is left when some of the stems are felled.</summary>
    /// <param name="shareFelled">Of each class, by its place, 0 to 1: classes may be alike.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share is not from 0 to 1.</exception>
    public Stand Without(Func<StemClass, int, double> shareFelled) => this with
    {
        Classes = [.. Classes.Select((stems, place) => Left(stems, shareFelled(stems, place))).Where(stems => stems.StemsPerAcre > 0)],
    };

    private static StemClass Left(StemClass stems, double shareFelled) => shareFelled is >= 0 and <= 1
        ? stems with { StemsPerAcre = stems.StemsPerAcre * (1 - shareFelled) }
        : throw new ArgumentOutOfRangeException(nameof(shareFelled), shareFelled, "A share lies from 0 to 1.");

    private double Sum(Func<double, double> ofTree) => Classes.Sum(stems => stems.StemsPerAcre * ofTree(stems.DbhIn));
}
