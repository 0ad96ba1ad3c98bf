using System.Collections.Immutable;

namespace WorkWindows.Engine.Stands.Hours;

/// <summary>How long one tree takes, minutes, best and usual.</summary>
/// <param name="UpToDbhIn">The largest diameter that it holds for, inches.</param>
/// <param name="MinutesATree">Minutes of scheduled time.</param>
/// <param name="People">How many work on it: the sawyer, or one with an assistant.</param>
/// <param name="Source">Where it is published.</param>
public sealed record CuttingRate(double UpToDbhIn, ValueRange MinutesATree, ValueRange People, string Source)
{
    /// <summary>Minutes of one person.</summary>
    public ValueRange PersonMinutesATree => new(MinutesATree.Low * People.Low, MinutesATree.High * People.High);
}

/// <summary>Published rates of work. Few fit the cutting of habitat, so hours are a range and never one number.</summary>
/// <remarks>Source: docs/rules/stands.md.</remarks>
public static class WorkRates
{
    /// <summary>Trees of 1 to 8 in: 145 a productive hour at best, of which 73 % is worked; 90 a scheduled hour usually.</summary>
    public const double BestTreesPerProductiveHour = 145, UsualTreesPerScheduledHour = 90, ProductiveShare = 0.73;

    /// <summary>Large trees in mountains, with an assistant: minutes a tree, two stands.</summary>
    public const double LeastMinutesALargeTree = 13.19, MostMinutesALargeTree = 13.86;

    private const double MinutesAnHour = 60;

    /// <summary>
    /// The rates by diameter, each from the one before it on. Between 8 in and large trees nothing is published: the
    /// range spans both. Where large begins is common practice, no source.
    /// </summary>
    public static ImmutableArray<CuttingRate> Cutting { get; } =
    [
        new(8, new(MinutesAnHour / BestTreesPerProductiveHour / ProductiveShare, MinutesAnHour / UsualTreesPerScheduledHour),
            ValueRange.Of(1), "Hoffman 1986, Maine Agricultural Experiment Station Bulletin 813"),
        new(16, new(MinutesAnHour / UsualTreesPerScheduledHour, MostMinutesALargeTree), new(1, 2), "not published: between the others"),
        new(double.PositiveInfinity, new(LeastMinutesALargeTree, MostMinutesALargeTree), ValueRange.Of(2),
            "Campu and Ciubotaru 2017, Silva Fennica 51(2) 1657"),
    ];

    /// <summary>Hours an acre of releasing crop trees in hardwoods 7 to 12 m tall (Soucy and Beland 2020).</summary>
    public static ValueRange CropTreeReleaseHoursPerAcre { get; } =
        new(1 / (0.47 * AcresPerHectare), 1 / (0.22 * AcresPerHectare));

    /// <summary>Seedlings a planter sets in a day with a bar (University of Minnesota, Woodland Stewardship, chapter 4).</summary>
    public static ValueRange SeedlingsPerDay { get; } = new(1_000, 3_000);

    private const double AcresPerHectare = 2.471;

    /// <summary>Hours of a sawyer, with an assistant where the rate has one, to cut stems.</summary>
    /// <param name="stems">Diameter in inches and number of each class that is cut.</param>
    public static ValueRange CuttingHours(IEnumerable<(double DbhIn, double Count)> stems) => stems.Aggregate(
        ValueRange.Of(0), (sum, one) => sum + (RateFor(one.DbhIn).MinutesATree * (one.Count / MinutesAnHour)));

    /// <summary>The same in hours of one person: large trees take two people as long as a sawyer with an assistant.</summary>
    /// <param name="stems">Diameter in inches and number of each class that is cut.</param>
    public static ValueRange CuttingPersonHours(IEnumerable<(double DbhIn, double Count)> stems) => stems.Aggregate(
        ValueRange.Of(0), (sum, one) => sum + (RateFor(one.DbhIn).PersonMinutesATree * (one.Count / MinutesAnHour)));

    /// <summary>Hours an acre of one sawyer who looks for trees to keep and cuts others.</summary>
    /// <param name="cutPerAcre">Stems cut an acre.</param>
    /// <param name="minutesATree">Minutes to cut one.</param>
    /// <param name="cropTreesPerAcre">Trees kept, an acre.</param>
    /// <param name="minutesASearch">Minutes to find one of them.</param>
    /// <param name="workedShare">The share of time that is worked, where the minutes are productive; 1 where they are
    /// scheduled.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not above 0 and at most 1.</exception>
    public static double HoursPerAcre(
        double cutPerAcre, double minutesATree, double cropTreesPerAcre, double minutesASearch, double workedShare) =>
        workedShare is > 0 and <= 1
            ? ((cutPerAcre * minutesATree) + (cropTreesPerAcre * minutesASearch)) / MinutesAnHour / workedShare
            : throw new ArgumentOutOfRangeException(nameof(workedShare), workedShare, "A share of time is above 0.");

    /// <summary>Days of one planter.</summary>
    public static ValueRange PlantingDays(double seedlings) =>
        new(seedlings / SeedlingsPerDay.High, seedlings / SeedlingsPerDay.Low);

    public static CuttingRate RateFor(double dbhIn) => Cutting.First(rate => dbhIn <= rate.UpToDbhIn);
}
