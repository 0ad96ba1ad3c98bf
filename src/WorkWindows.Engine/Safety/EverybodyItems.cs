using WorkWindows.Engine.Rules;
using static WorkWindows.Engine.Safety.Documents;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Safety;

/// <summary>What goes with every practice in the woods.</summary>
internal static class EverybodyItems
{
    public static SafetyItem[] All { get; } =
    [
        new("gear-check", "Check your gear before first use. Replace what is damaged.", Wear,
            Logging("(d)(1)(i)-(ii)"), Authority.Regulation),
        new("hard-hat", "Wear a hard hat (ANSI/ISEA Z89.1), in a bright colour.", Wear,
            Logging("(d)(1)(vi)"), Authority.Regulation, FromMemory: true),
        new("eyes", "Wear eye protection (ANSI/ISEA Z87.1).", Wear,
            Logging("(d)(1)(vii)"), Authority.Regulation),
        new("boots", "Wear heavy, waterproof boots that cover the ankle.", Wear,
            Logging("(d)(1)(v)"), Authority.Regulation),
        new("first-aid-kit", "Carry a first aid kit (ANSI/ISEA Z308.1) to every cutting site and in every vehicle.",
            Carry, Logging("(d)(2)(i)"), Authority.Regulation),
        new("first-aid-size", "Bring one kit for every two or three people.", Carry,
            Logging("Appendix A"), Authority.Regulation),
        new("help-directions", "Carry written directions for calling help: number, address, way in.", Carry,
            Logging("Appendix A"), Authority.Regulation),
        new("first-aid-training", "Everybody has current first aid and CPR training.", Do,
            Logging("(i)(7)(i)-(ii)"), Authority.Regulation),
        new("never-alone", "Never work alone. Stay within sight or hearing of another worker.", Do,
            Logging("(d)(6)(iii)"), Authority.Regulation),
        new("danger-trees", "Look up. Keep two tree lengths from dead, hung or lodged trees that can come down.", Do,
            Logging("(h)(1)(vi)"), Authority.Regulation),
        new("heat", "Heat index of 91 °F or more: drink 4 cups an hour, rest in shade, watch each other.", Do,
            new("OSHA, using the heat index"), Authority.AgencyGuideline),
        new("head-count", "Count everybody at the end of the shift.", Do,
            Logging("(d)(6)(iv)"), Authority.Regulation, FromMemory: true),
        new("stop-weather",
            "Stop and go to a safe place in lightning, high wind, heavy rain or snow, extreme cold, dense fog, fire, "
            + "mudslide or darkness.",
            Stop, Logging("(d)(5)"), Authority.Regulation),
        new("stop-lightning",
            "Thunder within 30 s of the flash: go into a building or hard-top vehicle. Stay until 30 min after the "
            + "last thunder.",
            Stop, new("Texas DWC, OSHA/NOAA FS-3863", "30-30 rule"), Authority.AgencyGuideline),
    ];
}
