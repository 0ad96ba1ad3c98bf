namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>How temperature falls with height. Source: docs/rules/parcel-record.md.</summary>
internal static class LapseRate
{
    /// <summary>
    /// The standard atmosphere's (ICAO Doc 7488), which the afternoon's mixed air comes near, °C per km.
    /// </summary>
    public const double MaxCPerKm = 6.5;

    /// <summary>
    /// Cold air pools at night; half of the standard atmosphere's: common practice, no source, °C per km.
    /// </summary>
    public const double MinCPerKm = 3.25;

    private const double MPerKm = 1000;

    /// <summary>What to add to a temperature at one elevation for another, °C; 0 when either is not known.</summary>
    public static double CorrectionC(DailyElement element, double? fromM, double? toM) =>
        (fromM - toM) / MPerKm * (element == DailyElement.MaxTemperatureC ? MaxCPerKm : MinCPerKm) ?? 0;
}
