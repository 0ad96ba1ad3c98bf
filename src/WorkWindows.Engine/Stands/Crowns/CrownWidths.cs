using System.Collections.Frozen;
using WorkWindows.Engine.Land;

namespace WorkWindows.Engine.Stands.Crowns;

/// <summary>How wide crowns are, in feet, by published equations.</summary>
/// <remarks>
/// Forest-grown: Bechtold 2003; open-grown: Ek 1974 and Krajicek 1961; both as coded in the USDA Forest Service's Forest
/// Vegetation Simulator. Source: docs/rules/stands.md.
/// </remarks>
public static class CrownWidths
{
    private const double ForestFromIn = 5;
    private const double OpenFromIn = 3;

    /// <summary>
    /// The width in a closed stand. A species without an equation of its own has the range over all that are published;
    /// below 5 in the width falls in proportion to the diameter.
    /// </summary>
    public static ValueRange ForestGrownFt(Species species, double dbhIn, CrownSite site) =>
        Forest.TryGetValue(species.Name, out var own)
            ? ValueRange.Of(own.Of(dbhIn, site))
            : ValueRange.Over(Forest.Values.Select(equation => equation.Of(dbhIn, site)));

    /// <summary>
    /// The width of a tree that never had a neighbour, a range where two are published; null where none is.
    /// </summary>
    public static ValueRange? OpenGrownFt(Species species, double dbhIn) =>
        Open.TryGetValue(species.Name, out var own) ? ValueRange.Over(own.Select(equation => equation.Of(dbhIn))) : null;

    /// <summary>Whether a species has an equation of its own.</summary>
    public static bool IsPublished(Species species) => Forest.ContainsKey(species.Name);

    private static readonly FrozenDictionary<string, ForestCrown> Forest = new Dictionary<string, ForestCrown>
    {
        ["red maple"] = new(2.7563, 1.4212, -.0143, .0993, -.0276, CapIn: 50),
        ["sugar maple"] = new(4.9399, 1.0727, 0, .1096, -.0493, CapFt: 54),
        ["boxelder"] = new(6.4741, 1.0778, 0, .0719, -.0637, CapFt: 57),
        ["northern red oak"] = new(2.8908, 1.4077, 0, .0643, 0, CapFt: 82),
        ["white oak"] = new(3.2375, 1.5234, 0, .0455, -.0324, CapFt: 69),
        ["shagbark hickory"] = new(4.5453, 1.3721, 0, .0430, 0, CapFt: 54),
        ["black cherry"] = new(3.0237, 1.1119, 0, .1112, -.0493, CapFt: 52),
        ["white ash"] = new(1.7625, 1.3413, 0, .0957, 0, CapFt: 62),
        ["trembling aspen"] = new(0.7315, 1.3180, 0, .0966, 0, CapFt: 39),
        ["American basswood"] = new(1.6871, 1.2110, 0, .1194, -.0264, CapFt: 61),
        ["American elm"] = new(1.7296, 2.0732, 0, .0590, -.0869, CapFt: 50),
        ["American hornbeam"] = new(0.9219, 1.6303, 0, .1150, -.1113, CapFt: 42),
        ["American hophornbeam"] = new(7.8084, .8129, 0, .0941, -.0817, CapFt: 39),
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, OpenCrown[]> Open = new Dictionary<string, OpenCrown[]>
    {
        ["red maple"] = [new(0, 4.776, .7656, CapIn: 50)],
        // Ek, and Krajicek.
        ["northern red oak"] = [new(2.85, 3.782, .7968, CapFt: 82), new(4.51, 1.67, 1, CapFt: 82)],
        ["white oak"] = [new(1.80, 1.883, 1, CapFt: 69)],
        ["shagbark hickory"] = [new(2.36, 3.548, .7986, CapFt: 54)],
        ["American elm"] = [new(2.829, 3.456, .8575, CapFt: 50)],
        ["black cherry"] = [new(.621, 7.059, .5441, CapFt: 52)],
        ["sugar maple"] = [new(.868, 4.15, .7514, CapFt: 54)],
    }.ToFrozenDictionary();

    /// <summary>a + bD + cD² + d·CR + e·HI.</summary>
    private sealed record ForestCrown(
        double A, double B, double C, double LiveCrown, double Hopkins,
        double CapIn = double.PositiveInfinity, double CapFt = double.PositiveInfinity)
    {
        public double Of(double dbhIn, CrownSite site)
        {
            var at = Math.Clamp(dbhIn, ForestFromIn, CapIn);
            var width = A + (B * at) + (C * at * at) + (LiveCrown * site.LiveCrownPercent) + (Hopkins * site.HopkinsIndex);
            return Math.Clamp(width, 0, CapFt) * Math.Min(1, dbhIn / ForestFromIn);
        }
    }

    /// <summary>a + bD^c.</summary>
    private sealed record OpenCrown(
        double A, double B, double Power, double CapIn = double.PositiveInfinity, double CapFt = double.PositiveInfinity)
    {
        public double Of(double dbhIn)
        {
            var at = Math.Clamp(dbhIn, OpenFromIn, CapIn);
            return Math.Min(A + (B * Math.Pow(at, Power)), CapFt) * Math.Min(1, dbhIn / OpenFromIn);
        }
    }
}
