using System.Collections.Frozen;
using WorkWindows.Engine.Land;

namespace WorkWindows.Engine.Stands.Sprouts;

/// <summary>
/// The share of severed stumps that sprout, 0 to 1, by diameter. Of stems that stay on a hinge no curve is published:
/// what becomes of them is not known.
/// </summary>
/// <remarks>
/// As coded in the USDA Forest Service's Forest Vegetation Simulator: Lake States from the literature, southern
/// Appalachians from Keyser and Loftis. The two disagree, for white oak widely. Source: docs/rules/stands.md.
/// </remarks>
public static class Sprouting
{
    /// <summary>The share by each model that has the species, as a range.</summary>
    /// <returns>Null for conifers, which do not sprout, and for trembling aspen, which suckers from its roots.</returns>
    public static ValueRange? Share(Species species, double dbhIn)
    {
        if (species.Group == SpeciesGroup.Conifer || Suckers(species))
            return null;
        var lake = LakeStates(species, dbhIn);
        return species.Name == "bigtooth aspen" ? ValueRange.Of(lake) : ValueRange.Over([lake, SouthernAppalachians(species, dbhIn)]);
    }

    /// <summary>Whether it comes back from its roots and not from its stump.</summary>
    public static bool Suckers(Species species) => species.Name == "trembling aspen";

    /// <summary>
    /// Suckers an acre of trembling aspen that is felled, fewest and most: in proportion to the basal area that is cut, all of
    /// it at 198 ft² an acre.
    /// </summary>
    /// <param name="cutFt2PerAcre">Basal area of trembling aspen that is cut, ft² an acre.</param>
    public static ValueRange SuckersPerAcre(double cutFt2PerAcre) =>
        new ValueRange(2_608, 30_125) * (cutFt2PerAcre / 198);

    /// <returns>The share; all stumps of a species that the model does not name.</returns>
    public static double LakeStates(Species species, double dbhIn) =>
        Lake.TryGetValue(species.Name, out var share) ? Math.Clamp(share(dbhIn), 0, 1) : 1;

    /// <returns>The share; that of upland hardwoods together for a species without a curve of its own.</returns>
    public static double SouthernAppalachians(Species species, double dbhIn) =>
        South.TryGetValue(species.Name, out var share) ? share(dbhIn) : Logistic(2.7386 - (.1076 * dbhIn));

    private static double Logistic(double z) => 1 / (1 + Math.Exp(-z));

    private static Func<double, double> Always(double share) => _ => share;

    private static Func<double, double> Until(double dbhIn, double below, double from) => d => d < dbhIn ? below : from;

    private static double WhiteOakOfTheLakes(double d) => Logistic(1.6134 - (.0184 * 2.54 * ((d / .7788) - .4403)));

    private static double SugarMapleOfTheLakes(double d) => (89.191 - (2.611 * d)) / 100;

    private static readonly FrozenDictionary<string, Func<double, double>> Lake = new Dictionary<string, Func<double, double>>
    {
        ["red maple"] = Until(12, .80, .50),
        ["silver maple"] = Until(12, .80, .50),
        ["black cherry"] = Until(12, .80, .50),
        ["white ash"] = Until(12, .80, .50),
        ["green ash"] = Until(12, .80, .50),
        ["black ash"] = Until(12, .80, .50),
        ["sugar maple"] = SugarMapleOfTheLakes,
        ["black maple"] = SugarMapleOfTheLakes,
        ["boxelder"] = Until(15, .60, .30),
        ["American elm"] = Always(.70),
        ["slippery elm"] = Always(.70),
        ["rock elm"] = Always(.70),
        ["American basswood"] = Always(.80),
        ["bitternut hickory"] = Until(24, .95, .60),
        ["shagbark hickory"] = Until(24, .95, .60),
        ["pignut hickory"] = Until(24, .75, .50),
        ["American hophornbeam"] = Always(.80),
        ["American hornbeam"] = Always(.70),
        ["bigtooth aspen"] = Always(.80),
        ["paper birch"] = Always(.70),
        ["yellow birch"] = Always(.30),
        ["American beech"] = Always(.50),
        ["white oak"] = WhiteOakOfTheLakes,
        ["bur oak"] = Always(.80),
        ["swamp white oak"] = d => .9 * WhiteOakOfTheLakes(d),
        ["northern red oak"] = d => (57.3 - (.0032 * d * d * d)) / 100,
        ["black oak"] = d => Logistic(6.0065 - (.0777 * 2.54 * d / .7801)),
        ["hackberry"] = Until(8, .40, .20),
        ["black locust"] = Always(.90),
        ["black willow"] = Always(.90),
        ["flowering dogwood"] = Until(8, .70, .90),
        ["apple"] = Always(.50),
        ["hawthorn"] = Always(.70),
        ["chokecherry"] = Always(.80),
        ["northern pin oak"] = Always(.80),
        ["black walnut"] = Until(8, .80, .50),
        ["butternut"] = Until(8, .30, 0),
    }.ToFrozenDictionary();

    private static double BirchOfTheSouth(double d) => Logistic(3.3670 - (.5159 * d));

    private static readonly FrozenDictionary<string, Func<double, double>> South = new Dictionary<string, Func<double, double>>
    {
        ["red maple"] = d => Logistic(4.1975 - (.1821 * d)),
        ["sugar maple"] = Always(.73),
        ["black maple"] = Always(.73),
        ["boxelder"] = Always(.94),
        ["American basswood"] = Always(.99),
        ["bitternut hickory"] = Always(.95),
        ["shagbark hickory"] = Always(.95),
        ["pignut hickory"] = Always(.95),
        ["American hophornbeam"] = Always(.94),
        ["American hornbeam"] = Always(.94),
        ["paper birch"] = BirchOfTheSouth,
        ["yellow birch"] = BirchOfTheSouth,
        ["sweet birch"] = BirchOfTheSouth,
        ["American beech"] = Always(.93),
        ["white oak"] = d => Logistic(2.4608 - (.3093 * d)),
        ["northern red oak"] = d => Logistic(3.2586 - (.1120 * d)),
        ["black oak"] = d => Logistic(3.1070 - (.2128 * d)),
        ["black locust"] = Always(.86),
        ["flowering dogwood"] = Always(.94),
        ["apple"] = Always(.94),
    }.ToFrozenDictionary();
}
