using WorkWindows.Engine.HeatAndCold;
using WorkWindows.Engine.Land;
using static System.FormattableString;

namespace WorkWindows.Engine.Safety;

/// <summary>What items say for the figures of a day and the flags of a parcel.</summary>
/// <remarks>
/// Figures are told in steps, rounded to the side that asks for more care, so that a list that was signed does not change
/// with every tenth of a degree of a new forecast. Sources: docs/rules/checklist.md, docs/rules/heat-and-cold.md.
/// </remarks>
internal static class SceneTexts
{
    private const double StepF = 5, StepMph = 5, StepIn = 2;

    /// <summary>OSHA's proposed initial trigger, 2024 (S2); below it nothing is asked for heat.</summary>
    private const double WarmF = 80;

    /// <summary>Bare skin freezes in 30 minutes: NWS chart, 2001 (S2). The other two are from memory.</summary>
    private const double FrostIn30MinF = -18, FrostIn10MinF = -32, FrostIn5MinF = -48;

    /// <returns>The item as it is shown; null where the day's figures leave nothing of it.</returns>
    public static SafetyItem? In(SafetyScene scene, SafetyItem item) => item.Id switch
    {
        "heat" => Heat(scene.Figures, item),
        "cold" => Cold(scene.Figures, item),
        "dark" when scene.Figures.DarkMinutes is > 0 and { } minutes => item with
        {
            Text = Invariant($"{minutes:0} min of the shift lie before sunrise or after sunset: no cutting then."),
        },
        "felling-wind" when scene.Figures is { WindMph: { } wind, GustMph: { } gust } =>
            item with { Text = $"Wind to {Up(wind, StepMph)} mph, gusts to {Up(gust, StepMph)} mph. {item.Text}" },
        "felling-look" when scene.Figures.SnowDepthIn is > 0 and { } depth =>
            item with { Text = $"Snow lies, up to {Up(depth, StepIn)} in. {item.Text}" },
        "felling-spacing" when scene.SiteFlags.Contains(SiteFlag.SteepSlope) => item with
        {
            Text = "Steep ground, where stems may roll or slide: keep more than two tree lengths between crews.",
        },
        "felling-power-line" when scene.SiteFlags.Contains(SiteFlag.PowerLine) =>
            item with { Text = $"A power line is within reach of the trees: fell away from it. {item.Text}" },
        _ => item,
    };

    private static SafetyItem? Heat(DayFigures figures, SafetyItem item)
    {
        // No humidity brings the index to 91 °F below 80 °F of air temperature.
        if (figures is { HeatIndexF: < WarmF } or { HeatIndexF: null, MaxTempF: < WarmF })
            return null;
        // Work with a saw in leg protection is heavy work: it takes the measures of the band above its own.
        return figures.HeatIndexF is not { } index ? item : item with
        {
            Text = HeatBands.Of(index) switch
            {
                HeatBand.Lower =>
                    "Heat index up to 91 °F, in the sun up to 15 °F more: drink 4 cups an hour, rest in shade, watch each "
                    + "other. Whoever is not used to heat starts with short turns.",
                HeatBand.Moderate => "Heat index 91 to 103 °F: put heavy work off if you can. Else 4 cups an hour, rest in "
                    + "shade, watch each other.",
                HeatBand.High => "Heat index 103 to 115 °F: put the work off. Else short turns, 4 cups an hour, shade, watch "
                    + "each other.",
                HeatBand.Extreme => "Heat index above 115 °F: do not work.",
                null => item.Text,
            },
        };
    }

    private static SafetyItem? Cold(DayFigures figures, SafetyItem item)
    {
        if (figures is { MinTempF: > WindChill.MaxTempF })
            return null;
        if (figures.WindChillF is not { } chill)
            return item;
        var down = Invariant($"Wind chill down to {Math.Floor(chill / StepF) * StepF:0} °F");
        const string Measures = "Cover it, keep dry, warm up in turns, watch each other.";
        return chill switch
        {
            > FrostIn30MinF => item with { Text = $"{down}: cover bare skin, keep dry, warm up in turns." },
            > FrostIn10MinF => item with { Text = $"{down}: bare skin freezes in 30 min. {Measures}" },
            > FrostIn5MinF => item with { Text = $"{down}: bare skin freezes in 10 min. {Measures}", FromMemory = true },
            _ => item with { Text = $"{down}: bare skin freezes in 5 min. {Measures}", FromMemory = true },
        };
    }

    private static string Up(double value, double step) => Invariant($"{Math.Ceiling(value / step) * step:0}");
}
