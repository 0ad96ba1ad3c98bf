using System.Collections.Frozen;
using System.Globalization;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Stands.Suitability;

/// <summary>Which stems take a hinge. Source: docs/rules/stands.md; where no other is named, common practice.</summary>
public static class HingeTrees
{
    private const string NoSource = "common practice, no source";
    private const string House = "the organization's own";

    private static readonly FrozenSet<string> Brittle = ["black cherry", "pin cherry", "chokecherry", "red maple"];

    private static readonly FrozenSet<SpeciesGroup> Bends = [SpeciesGroup.Maple, SpeciesGroup.Cherry];

    private static readonly FrozenSet<string> BendsByName =
        ["American beech", "black gum", "American hornbeam", "American elm", "slippery elm", "rock elm"];

    private static readonly FrozenDictionary<string, string> Care = new Dictionary<string, string>
    {
        ["boxelder"] = "Its wood is weak and the hinge often snaps.",
        ["American basswood"] = "Its wood is weak and the hinge often snaps.",
        ["black willow"] = "Its wood is weak and the hinge often snaps.",
        ["silver maple"] = "Its wood is weak and the hinge often snaps.",
        ["American hophornbeam"] = "It is heavy and may split up the stem when it leans.",
    }.ToFrozenDictionary();

    /// <returns>The first reason that decides, the strictest first.</returns>
    public static SuitabilityFinding Of(StemClass stems, HingeLimits limits)
    {
        var (species, dbhIn) = (stems.Species, stems.DbhIn);
        if (limits.Species.TryGetValue(species.Name, out var own))
            return Own(own, dbhIn, limits);
        if (species.Group == SpeciesGroup.Conifer)
            return No("conifer", "Conifers die when they are hinged. Leave them as cover.");
        if (species.Group == SpeciesGroup.Aspen || species.Name is "eastern cottonwood" or "yellow-poplar")
            return No("poplar", "Aspen and poplar snap. Fell them: aspen comes back from its roots.");
        if (species.Group == SpeciesGroup.Ash)
            return No("ash", "Ash splits, and stems killed by borers are brittle. Fell by machine or leave.");
        if (dbhIn > limits.LargestDbhIn)
            return TooLarge(limits);
        if (Brittle.Contains(species.Name) && dbhIn > limits.LargestBrittleDbhIn)
            return No("brittle", $"Above {Inches(limits.LargestBrittleDbhIn)} cherry and red maple snap.");
        if (species.Group == SpeciesGroup.Hickory)
            return WithCare("barber-chair", "Hickory is heavy and may split up the stem when it leans.");
        if (Care.TryGetValue(species.Name, out var care))
            return WithCare("weak-or-heavy", care);
        if (species.Group is SpeciesGroup.RedOak or SpeciesGroup.WhiteOak)
            return WithCare("heavy-top", "Oak has a heavy top; keep to the days without the beetles that carry oak wilt.");
        if (!Bends.Contains(species.Group) && !BendsByName.Contains(species.Name))
        {
            return new(
                "not-known", Fit.Unknown, "Whether it bends and holds is not known. Try one stem, low and slowly, or fell it.",
                Authority.CommonPractice, NoSource);
        }
        return dbhIn > limits.EasyDbhIn
            ? Large(limits)
            : new("takes-it", Fit.Fits, "It bends and holds.", Authority.CommonPractice, NoSource);
    }

    private static SuitabilityFinding Own(Fit fit, double dbhIn, HingeLimits limits) => fit switch
    {
        Fit.Fits or Fit.WithCare when dbhIn > limits.LargestDbhIn => TooLarge(limits),
        Fit.Fits when dbhIn > limits.EasyDbhIn => Large(limits),
        Fit.Fits => new("own", fit, "By your own list it bends and holds.", Authority.CommonPractice, House),
        Fit.WithCare => new("own", fit, "By your own list it is hinged with care.", Authority.CommonPractice, House),
        Fit.No => new("own", fit, "By your own list it is not hinged.", Authority.CommonPractice, House),
        _ => throw new ArgumentOutOfRangeException(nameof(fit), fit, "A list says whether a species is hinged."),
    };

    private static SuitabilityFinding TooLarge(HingeLimits limits) =>
        No("too-large", $"Above {Inches(limits.LargestDbhIn)} a stem splits or kicks back. Fell it or leave it.");

    private static SuitabilityFinding Large(HingeLimits limits) =>
        WithCare("large", $"Above {Inches(limits.EasyDbhIn)} cut slowly and watch for a split.");

    /// <summary>The same for a class of diameters, whose ends may differ; the lower end is in it.</summary>
    /// <param name="species">The species.</param>
    /// <param name="dbhIn">The ends of the class, inches; one of equal ends holds stems of that diameter.</param>
    /// <param name="limits">What hinge cutting keeps within.</param>
    public static SuitabilityFinding OfClass(Species species, ValueRange dbhIn, HingeLimits limits)
    {
        var thin = Of(new(species, dbhIn.Low, 1), limits);
        var thick = Of(new(species, dbhIn.High, 1), limits);
        return thin.Fit == thick.Fit || thick.Fit != Fit.No
            ? thick
            : thin with
            {
                Key = "thin-only",
                // What is not known of the thin ones does not become known because the thick ones are out.
                Fit = thin.Fit == Fit.Unknown ? Fit.Unknown : Fit.WithCare,
                Says = thin.Fit == Fit.Fits ? $"Only the thin ones. {thick.Says}" : $"Only the thin ones. {thick.Says} {thin.Says}",
            };
    }

    private static SuitabilityFinding No(string key, string says) =>
        new(key, Fit.No, says, Authority.CommonPractice, NoSource);

    private static SuitabilityFinding WithCare(string key, string says) =>
        new(key, Fit.WithCare, says, Authority.CommonPractice, NoSource);

    private static string Inches(double dbhIn) => string.Create(CultureInfo.InvariantCulture, $"{dbhIn:0.#} in");
}
