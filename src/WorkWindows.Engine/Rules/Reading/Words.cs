using WorkWindows.Engine.Land;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>The words of a rule pack and what they stand for.</summary>
internal static class Words
{
    public static IReadOnlyDictionary<string, Effect> Effects { get; } = Named<Effect>();

    public static IReadOnlyDictionary<string, PackLevel> Levels { get; } = Named<PackLevel>();

    public static IReadOnlyDictionary<string, DegreeDayMethod> Methods { get; } = Named<DegreeDayMethod>();

    public static IReadOnlyDictionary<string, bool> YesOrNo { get; } = new Dictionary<string, bool>
    {
        ["true"] = true,
        ["false"] = false,
    };

    public static IReadOnlyDictionary<string, Authority> Authorities { get; } = Named<Authority>();

    public static IReadOnlyDictionary<string, SpeciesGroup> Species { get; } = Named<SpeciesGroup>();

    public static IReadOnlyDictionary<string, SiteFlag> Flags { get; } = Named<SiteFlag>();

    public static IReadOnlyDictionary<string, Relation> Relations { get; } = Named<Relation>();

    public static IReadOnlyDictionary<string, SeasonEventKind> Events { get; } = Named<SeasonEventKind>();

    public static IReadOnlyDictionary<string, PracticeTraits> Traits { get; } = Named<PracticeTraits>()
        .Where(trait => trait.Value != PracticeTraits.None).ToDictionary();

    public static IReadOnlyDictionary<string, NodaTime.IsoDayOfWeek> Weekdays { get; } = Named<NodaTime.IsoDayOfWeek>()
        .Where(day => day.Value != NodaTime.IsoDayOfWeek.None).ToDictionary();

    public static IReadOnlyDictionary<string, SignalKind> Signals { get; } = new Dictionary<string, SignalKind>
    {
        ["min-temperature"] = SignalKind.MinTemperatureC,
        ["max-temperature"] = SignalKind.MaxTemperatureC,
        ["wind"] = SignalKind.WindMps,
        ["gust"] = SignalKind.GustMps,
        ["dark-shift"] = SignalKind.DarkShiftMinutes,
        ["light-shift"] = SignalKind.LightShiftMinutes,
        ["precipitation"] = SignalKind.PrecipitationMm,
        ["snow-depth"] = SignalKind.SnowDepthCm,
        ["min-humidity"] = SignalKind.MinHumidityPercent,
        ["thunder-chance"] = SignalKind.ThunderChancePercent,
        ["heat-index"] = SignalKind.HeatIndexC,
        ["wind-chill"] = SignalKind.WindChillC,
        ["frozen-ground-index"] = SignalKind.FrozenGroundIndexC,
        ["frost-depth"] = SignalKind.FrostDepthCm,
    };

    /// <summary>The alerts are not compared: a rule asks whether one is in force.</summary>
    public static IReadOnlyDictionary<string, SignalKind> Alerts { get; } = new Dictionary<string, SignalKind>
    {
        ["red-flag"] = SignalKind.RedFlagAlert,
        ["wind"] = SignalKind.WindAlert,
        ["winter-storm"] = SignalKind.WinterStormAlert,
        ["thunderstorm"] = SignalKind.ThunderstormAlert,
    };

    /// <summary>The form of a member's name in files: lower case with hyphens.</summary>
    public static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : $"{c}"));

    private static Dictionary<string, T> Named<T>()
        where T : struct, Enum =>
        Enum.GetValues<T>().ToDictionary(value => Kebab(value.ToString()));
}
