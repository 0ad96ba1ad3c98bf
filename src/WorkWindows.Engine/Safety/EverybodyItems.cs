using WorkWindows.Engine.Land;
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
        new("training", "Everybody is trained for this work, its tools and its hazards.", Do,
            Logging("(i)(3)"), Authority.Regulation, FromMemory: true),
        new("training-insects", "Everybody knows what to do about bites and stings, of ticks and wasps among others.", Do,
            Logging("(i)(3)(iv)"), Authority.Regulation),
        new("never-alone", "Never work alone. Stay within sight or hearing of another worker.", Do,
            Logging("(d)(6)(iii)"), Authority.Regulation),
        new("danger-trees", "Look up. Keep two tree lengths from dead, hung or lodged trees that can come down.", Do,
            Logging("(h)(1)(vi)"), Authority.Regulation),
        new("heat", "Heat index of 91 °F or more: drink 4 cups an hour, rest in shade, watch each other.", Do,
            new("OSHA, using the heat index"), Authority.AgencyGuideline),
        new("cold", "Wind chill of -18 °F or less: bare skin freezes in 30 min. Cover it, warm up, watch each other.", Do,
            new("US National Weather Service, wind chill chart", "2001"), Authority.AgencyGuideline),
        new("wet-ground", "The ground is wet: try your footing and your way out before each cut.", Do,
            SafetySource.None, Authority.CommonPractice) { Flag = SiteFlag.WetGround },
        new("head-count", "Count everybody at the end of the shift.", Do,
            Logging("(d)(6)(iv)"), Authority.Regulation, FromMemory: true),
        new("stop-weather",
            "Stop and go to a safe place in lightning, high wind, heavy rain or snow, extreme cold, dense fog, fire, "
            + "mudslide or darkness.",
            Stop, Logging("(d)(5)"), Authority.Regulation),
        new("dark", "No cutting before sunrise or after sunset.", Stop,
            Logging("(d)(5)"), Authority.Regulation),
        new("stop-lightning",
            "Thunder within 30 s of the flash: go into a building or hard-top vehicle. Stay until 30 min after the "
            + "last thunder.",
            Stop, new("Texas DWC, OSHA/NOAA FS-3863", "30-30 rule"), Authority.AgencyGuideline),
    ];
}
