using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using static WorkWindows.Engine.Safety.Documents;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Safety;

/// <summary>What goes with machines, herbicide and fire.</summary>
internal static class OtherWorkItems
{
    public static SafetyItem[] All { get; } =
    [
        new("machine-distance", "Keep machines two tree lengths from anybody felling by hand.", Do,
            Logging("(h)(1)"), Authority.Regulation, PracticeTraits.MachineOnSoil),
        new("herbicide-label", "Read the label. Wear and do what it says.", Do,
            LabelPractice, Authority.CommonPractice, PracticeTraits.Herbicide, FromMemory: true),
        new("herbicide-frozen", "Do not treat wet, snowy or icy bark. Keep water-based mixes above freezing.", Do,
            LabelPractice, Authority.CommonPractice, PracticeTraits.Herbicide, FromMemory: true),
        new("fire-prescription",
            "Burn only within the written prescription: usually 30-50 % humidity, wind 2-15 mph, mixing height "
            + "1,700 ft or more.",
            Do, new("Prescribed fire, extension.org"), Authority.AgencyGuideline, PracticeTraits.Fire),
        new("fire-front", "Light up only if no front or wind shift is due within 12 h.", Do,
            new("Oklahoma State University Extension", "E-1010"), Authority.AgencyGuideline, PracticeTraits.Fire),
        new("fire-red-flag", "Red Flag Warning: no burning, no saws or other tools that throw sparks.", Stop,
            new("US National Weather Service, Red Flag Warnings"), Authority.AgencyGuideline,
            PracticeTraits.Fire | PracticeTraits.ChainSaw),
    ];
}
