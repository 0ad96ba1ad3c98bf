using System.Collections.Frozen;
using System.Collections.Immutable;
using static WorkWindows.Engine.Land.SpeciesGroup;

namespace WorkWindows.Engine.Land;

/// <summary>The tree species of eastern woods that an inventory may name.</summary>
public static class SpeciesCatalogue
{
    private static readonly FrozenDictionary<string, string> OtherNames = new Dictionary<string, string>
    {
        ["red oak"] = "northern red oak",
        ["quaking aspen"] = "trembling aspen",
        ["beech"] = "American beech",
        ["basswood"] = "American basswood",
        ["ironwood"] = "American hophornbeam",
        ["musclewood"] = "American hornbeam",
        ["tuliptree"] = "yellow-poplar",
        ["blackgum"] = "black gum",
        ["box elder"] = "boxelder",
        ["white pine"] = "eastern white pine",
        ["hemlock"] = "eastern hemlock",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Common names after the Forest Inventory and Analysis species list of the US Forest Service.</summary>
    public static ImmutableArray<Species> All { get; } =
    [
        .. Of(RedOak, "northern red oak", "black oak", "scarlet oak", "pin oak", "northern pin oak", "shingle oak"),
        .. Of(WhiteOak, "white oak", "bur oak", "swamp white oak", "chestnut oak", "chinkapin oak"),
        .. Of(Maple, "sugar maple", "red maple", "silver maple", "black maple", "boxelder"),
        .. Of(Aspen, "trembling aspen", "bigtooth aspen", "balsam poplar"),
        .. Of(Ash, "white ash", "green ash", "black ash"),
        .. Of(Hickory, "shagbark hickory", "bitternut hickory", "pignut hickory", "mockernut hickory"),
        .. Of(Cherry, "black cherry", "pin cherry", "chokecherry"),
        .. Of(OtherHardwood, "American beech", "American basswood", "yellow birch", "paper birch", "sweet birch",
            "black gum", "black walnut", "yellow-poplar", "American elm", "black locust", "American hophornbeam",
            "eastern cottonwood", "sassafras", "American hornbeam", "slippery elm", "rock elm", "hackberry", "black willow",
            "flowering dogwood", "apple", "hawthorn", "butternut"),
        .. Of(Conifer, "eastern white pine", "red pine", "jack pine", "eastern hemlock", "balsam fir", "white spruce",
            "black spruce", "Norway spruce", "northern white-cedar", "tamarack", "eastern redcedar"),
    ];

    private static readonly FrozenDictionary<string, Species> ByName =
        All.ToFrozenDictionary(species => species.Name, StringComparer.OrdinalIgnoreCase);

    /// <param name="name">A common name or one of its usual variants; capitals do not matter.</param>
    /// <returns>The species, or null if the catalogue does not have the name.</returns>
    public static Species? Find(string name) =>
        ByName.GetValueOrDefault(OtherNames.GetValueOrDefault(name, name));

    private static IEnumerable<Species> Of(SpeciesGroup group, params IEnumerable<string> names) =>
        names.Select(name => new Species(name, group));
}
