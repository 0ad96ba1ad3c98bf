using System.Collections.Frozen;
using WorkWindows.Engine.Land;

namespace WorkWindows.Engine.Stands.Sprouts;

/// <summary>
/// How many sprouts of a stump live on and how tall they grow (USDA Forest Service, Forest Vegetation Simulator, Lake
/// States). Source: docs/rules/stands.md.
/// </summary>
public static class SproutStems
{
    private static readonly FrozenSet<string> Many = ["American basswood", "bigtooth aspen", "balsam poplar"];

    private static readonly FrozenSet<string> Some =
    [
        "red maple", "silver maple", "sugar maple", "black maple", "black ash", "northern red oak", "black locust",
    ];

    /// <returns>The stems of one stump that sprouted; none of a beech of 4 in or more.</returns>
    public static int Kept(Species species, double dbhIn)
    {
        if (species.Name == "American beech" && dbhIn >= 4)
            return 0;
        if (Many.Contains(species.Name))
            return BySize(dbhIn, -1 + (.4 * dbhIn), most: 3);
        return Some.Contains(species.Name) ? BySize(dbhIn, .2 * dbhIn, most: 2) : 1;
    }

    /// <summary>The height in feet of sprouts of an age.</summary>
    /// <param name="siteIndexFt">Height of dominant trees at 50 years, feet.</param>
    /// <param name="ageYears">Years since the cut.</param>
    public static double HeightFt(double siteIndexFt, double ageYears) => (0.1 + (siteIndexFt / 50)) * ageYears;

    private static int BySize(double dbhIn, double between, int most) =>
        dbhIn < 5 ? 1 : dbhIn <= 10 ? (int)Math.Round(between, MidpointRounding.AwayFromZero) : most;
}
