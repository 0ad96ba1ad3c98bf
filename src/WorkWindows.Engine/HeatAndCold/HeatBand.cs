namespace WorkWindows.Engine.HeatAndCold;

/// <summary>
/// What a heat index asks of an employer, as OSHA's heat index guide bands it. Full sun may add up to 15 °F, and
/// strenuous work or heavy protective clothing asks for the band above. Source: docs/rules/heat-and-cold.md.
/// </summary>
public enum HeatBand
{
    /// <summary>Below 91 °F.</summary>
    Lower,

    /// <summary>From 91 °F: water, shade, getting used to it, a partner who watches.</summary>
    Moderate,

    /// <summary>From 103 °F: put work off where that can be done.</summary>
    High,

    /// <summary>Above 115 °F: only what cannot wait.</summary>
    Extreme,
}

/// <summary>Reads the bands.</summary>
public static class HeatBands
{
    /// <param name="heatIndexF">Heat index, °F. 103 °F, which the guide prints in two bands, is High.</param>
    /// <returns>Null when the index is NaN.</returns>
    public static HeatBand? Of(double heatIndexF) => heatIndexF switch
    {
        double.NaN => null,
        < 91 => HeatBand.Lower,
        < 103 => HeatBand.Moderate,
        <= 115 => HeatBand.High,
        _ => HeatBand.Extreme,
    };
}
