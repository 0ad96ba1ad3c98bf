using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using static WorkWindows.Engine.Safety.Documents;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Safety;

/// <summary>What goes with felling, and with cutting stems that are left on their hinge.</summary>
internal static class FellingItems
{
    private const PracticeTraits Felling = PracticeTraits.FellsTrees;

    public static SafetyItem[] All { get; } =
    [
        new("felling-spacing", "Keep two tree lengths between crews, more on slopes.", Do,
            Logging("(d)(6)(i)-(ii)"), Authority.Regulation, Felling, FromMemory: true),
        new("felling-approach", "Stay two tree lengths from a feller until the feller signals that it is safe.", Do,
            Logging("(h)(1)"), Authority.Regulation, Felling),
        new("felling-look", "Before each cut look for people, dead limbs, lean, wind, other trees, snow and ice.", Do,
            MichiganLogging("R 408.15151(2)"), Authority.AgencyGuideline, Felling),
        new("felling-danger-tree",
            "Take down or remove danger and lodged trees first. If one stays, mark it and keep two tree lengths off.",
            Do, Logging("(h)(1)(vi)"), Authority.Regulation, Felling),
        new("felling-retreat", "Clear a retreat path, diagonally away from the line of fall.", Do,
            Logging("(h)(2)(i)"), Authority.Regulation, Felling),
        new("felling-leave", "Leave by it as soon as the back cut is done.", Do,
            Logging("(h)(2)(ii)"), Authority.Regulation, Felling),
        new("felling-undercut", "Undercut every tree, unless your employer has shown that none is needed.", Do,
            Logging("(h)(2)(v)"), Authority.Regulation, Felling),
        new("felling-backcut", "Back cut above the face cut and leave enough hinge to hold the tree.", Do,
            Logging("(h)(2)(vi)-(vii)"), Authority.Regulation, Felling),
        new("felling-half-cut", "Nobody works within two tree lengths of a hung or half-cut stem.", Do,
            Logging("(h)(1)(vi), read for hinge cutting"), Authority.CommonPractice, Felling),
        new("hinged-tension", "A bent or hinged stem is under tension: stand to its side, never in its line or below it.", Do,
            SafetySource.None, Authority.CommonPractice) { Practices = ["hinge-cut", "re-cut", "tie-down"] },
        new("felling-power-line", "Tree on a power line: everybody clear, call the utility.", Stop,
            MichiganLogging("R 408.15151(4)"), Authority.AgencyGuideline, Felling),
        new("felling-wind", "Stop felling if wind can turn the tree, or weather or dark hides your view.", Stop,
            MichiganLogging("R 408.15117"), Authority.AgencyGuideline, Felling),
    ];
}
