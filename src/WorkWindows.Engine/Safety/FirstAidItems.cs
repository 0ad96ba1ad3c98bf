using WorkWindows.Engine.Rules;
using static WorkWindows.Engine.Safety.Documents;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Safety;

/// <summary>What helps whoever is hurt. It goes with every practice.</summary>
internal static class FirstAidItems
{
    public static SafetyItem[] All { get; } =
    [
        new("first-aid-kit", "Carry a first aid kit (ANSI/ISEA Z308.1) to every cutting site and in every vehicle.",
            Carry, Logging("(d)(2)(i)"), Authority.Regulation),
        new("first-aid-size", "Bring one kit for every two or three people.", Carry,
            Logging("Appendix A"), Authority.Regulation),
        new("first-aid-contents", "Look into each kit. It holds at least:", Carry,
            Logging("Appendix A"), Authority.Regulation)
        {
            Parts =
            [
                "gauze pads, at least 4 x 4 in", "two large gauze pads, at least 8 x 10 in", "a box of adhesive bandages",
                "one gauze roller bandage, at least 2 in wide", "two triangular bandages", "wound wipes", "scissors",
                "a blanket", "tweezers", "adhesive tape", "gloves", "a device for resuscitation", "two elastic wraps",
                "a splint", "written directions for calling help",
            ],
        },
        new("help-directions", "Carry written directions for calling help: number, address, way in.", Carry,
            Logging("Appendix A"), Authority.Regulation),
        new("first-aid-training", "Everybody has current first aid and CPR training.", Do,
            Logging("(i)(7)(i)-(ii)"), Authority.Regulation),
    ];
}
