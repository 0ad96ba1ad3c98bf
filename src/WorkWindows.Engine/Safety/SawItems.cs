using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using static WorkWindows.Engine.Safety.Documents;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Safety;

/// <summary>What goes with a chain saw.</summary>
internal static class SawItems
{
    private const PracticeTraits Saw = PracticeTraits.ChainSaw;

    public static SafetyItem[] All { get; } =
    [
        new("saw-face", "Wear a face shield or a logger's mesh screen.", Wear,
            Logging("(d)(1)(vii)"), Authority.Regulation, Saw),
        new("saw-ears", "Wear hearing protection. At a saw's 110 dBA the day's limit is reached in 30 min.", Wear,
            new("29 CFR 1910.95", "Table G-16"), Authority.Regulation, Saw),
        new("hearing-programme",
            "A saw's noise is above 85 dBA over 8 h: the employer has your hearing tested and trains you.", Wear,
            new("29 CFR 1910.95", "(c)(1)"), Authority.Regulation, Saw),
        new("saw-legs",
            "Wear cut-resistant leg protection (ASTM F1897 or F3325) from the upper thigh to the boot top.", Wear,
            Logging("(d)(1)(iv)"), Authority.Regulation, Saw),
        new("saw-boots", "Wear cut-resistant boots (ASTM F1818).", Wear,
            Logging("(d)(1)(v)"), Authority.Regulation, Saw, FromMemory: true),
        new("saw-gloves", "Wear gloves.", Wear, ForestService, Authority.AgencyGuideline, Saw),
        new("saw-sleeves", "Wear long sleeves.", Wear, ForestService, Authority.AgencyGuideline, Saw),
        new("saw-signals", "Agree on hand, whistle, horn or radio signals. The sound of a saw is not contact.", Do,
            Logging("(d)(7)(i)"), Authority.Regulation, Saw),
        new("saw-check", "Check chain tension, chain brake, muffler and tip guard before the shift.", Do,
            Logging("(e)(2)(ii)"), Authority.Regulation, Saw),
        new("saw-brake", "Use only a saw with a working chain brake. Disable no kickback guard.", Do,
            Logging("(e)(2)(i)"), Authority.Regulation, Saw),
        new("saw-fuelling", "Fuel at least 10 ft from flame and sparks.", Do,
            Logging("(e)(2)(iv)"), Authority.Regulation, Saw),
        new("saw-starting", "Start at least 10 ft from where you fuelled, saw on the ground or held firm, brake on. "
            + "Never drop-start.", Do,
            Logging("(e)(2)(v)-(vii)"), Authority.Regulation, Saw),
        new("saw-grip", "Find firm footing. Hold the saw with both hands, thumbs around the handles.", Do,
            new("Washington Administrative Code", "WAC 296-45-295"), Authority.AgencyGuideline, Saw),
        new("saw-carrying", "Brake on or engine off when you carry the saw more than 50 ft, or over bad ground.", Do,
            Logging("(e)(2)"), Authority.Regulation, Saw, FromMemory: true),
        new("saw-bucking", "Limb and buck from the uphill side, or chock the stem.", Do,
            new("North Carolina DOL, tree harvesting"), Authority.AgencyGuideline, Saw),
    ];
}
