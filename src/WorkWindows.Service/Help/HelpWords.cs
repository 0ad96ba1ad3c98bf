using System.Globalization;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands;

namespace WorkWindows.Service.Help;

/// <summary>What practices and measures are, in a few words of our own; common practice, no source.</summary>
public static class HelpWords
{
    public static string Of(Practice practice) => practice.Id switch
    {
        "overstory-felling" => "Trees of the upper layer are felled, so that light reaches the ground and young growth comes up.",
        "hinge-cut" => "A small live stem is cut part of the way through and laid over. What is left of the wood keeps it alive, as cover and as food.",
        "re-cut" => "Stems that were hinged years ago and have grown tall again are cut once more.",
        "tie-down" => "Hinged stems are tied or weighed down, so that their tops stay low.",
        "cleanup" => "Tops and stems that hang or lie in the way are brought to the ground and cut up.",
        "trail-opening" => "A way is cut free for walking, and for getting out.",
        "timber-harvest" => "Trees are felled and hauled out by machines.",
        "girdling" => "Bark and cambium are cut through all around, so that the tree dies where it stands.",
        "frill-herbicide" => "Herbicide is put into cuts around the stem.",
        "conifer-underplanting" => "Young conifers are planted under an opened canopy, for shelter in later winters.",
        "prescribed-burn" => "A fire is set on purpose and kept within lines.",
        _ => practice.Name,
    };

    public static string Of(PracticeTraits trait) => trait switch
    {
        PracticeTraits.FellsTrees => "fells trees",
        PracticeTraits.WoundsTrees => "wounds living trees",
        PracticeTraits.ChainSaw => "is done with a chain saw",
        PracticeTraits.MachineOnSoil => "has machines on the soil",
        PracticeTraits.Herbicide => "uses herbicide",
        PracticeTraits.Fire => "uses fire",
        PracticeTraits.Planting => "plants",
        _ => "",
    };

    public static string Of(SiteFlag flag) => flag switch
    {
        SiteFlag.OakWiltNearby => "oak wilt near by",
        SiteFlag.BatHabitat => "bat habitat",
        SiteFlag.RoostTree => "a roost tree of bats",
        SiteFlag.HibernaculumNearby => "a winter roost of bats near by",
        SiteFlag.NestBuffer => "an occupied nest",
        SiteFlag.EagleNestNear => "an eagle nest within 330 ft",
        SiteFlag.EagleNestBuffer => "an eagle nest within 660 ft",
        SiteFlag.HeterobasidionNearby => "Heterobasidion root disease within 25 miles",
        SiteFlag.WetGround => "wet ground",
        SiteFlag.FrozenGroundAccessOnly => "access on frozen ground alone",
        SiteFlag.QuietOnDeerOpeners => "quiet wanted on deer openers",
        SiteFlag.PublicHunting => "public hunting",
        SiteFlag.SteepSlope => "a steep slope",
        SiteFlag.PowerLine => "a power line within reach",
        SiteFlag.NearFood => "bedding cover near food",
        SiteFlag.DeepCover => "deep cover",
    };

    /// <summary>As in '6 to 20 hours', minutes where it is less than one.</summary>
    public static string Hours(ValueRange hours)
    {
        var (low, high, unit) = hours.High < 1 ? (hours.Low * 60, hours.High * 60, "minutes") : (hours.Low, hours.High, "hours");
        return hours.IsOne ? $"{Number(low)} {unit}" : $"{Number(low)} to {Number(high)} {unit}";

        static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>One of a unit, as in 'an acre'.</summary>
    public static string One(string unit) => unit switch
    {
        "acres" => "an acre",
        "feet" => "a foot",
        _ => $"a {unit.TrimEnd('s')}",
    };
}
