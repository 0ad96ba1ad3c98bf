using System.Globalization;
using UnitsNet;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>A limit in the unit that its source states it in.</summary>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
public sealed record Threshold(double Value, RuleUnit Unit)
{
    /// <summary>The limit in the unit that signals have: °C, m/s, minutes, mm, cm, %, degree-days in °C.</summary>
    public double InSignalUnit => Unit.ToSignalUnit(Value);
}

/// <summary>The units that a rule pack may use.</summary>
public enum RuleUnit
{
    DegF,
    DegC,
    Mph,
    MetersPerSecond,
    Minutes,
    Hours,
    WaterInches,
    WaterMillimeters,
    Inches,
    Centimeters,
    Percent,
    DegreeDaysF,
    DegreeDaysC,
}

/// <summary>The keys, symbols and conversions of the units of rule packs.</summary>
public static class RuleUnits
{
    /// <summary>The units that a signal may be compared in, with their keys in a pack; none for an alert.</summary>
    public static IReadOnlyDictionary<string, RuleUnit> For(SignalKind signal) => signal switch
    {
        SignalKind.MinTemperatureC or SignalKind.MaxTemperatureC or SignalKind.HeatIndexC or SignalKind.WindChillC =>
            Temperatures,
        SignalKind.WindMps or SignalKind.GustMps => Speeds,
        SignalKind.DarkShiftMinutes or SignalKind.LightShiftMinutes => Durations,
        SignalKind.PrecipitationMm => Water,
        SignalKind.SnowDepthCm or SignalKind.FrostDepthCm => Depths,
        SignalKind.MinHumidityPercent or SignalKind.ThunderChancePercent => Percentages,
        SignalKind.FrozenGroundIndexC => DegreeDays,
        SignalKind.RedFlagAlert or SignalKind.WindAlert or SignalKind.WinterStormAlert
            or SignalKind.ThunderstormAlert => None,
    };

    /// <summary>The unit in which people of the United States speak of a signal; null for an alert.</summary>
    public static RuleUnit? Usual(SignalKind signal) => For(signal).Values.Cast<RuleUnit?>().FirstOrDefault();

    /// <summary>The units of heat or cold summed over days, with their keys in a pack.</summary>
    public static IReadOnlyDictionary<string, RuleUnit> DegreeDays { get; } = new Dictionary<string, RuleUnit>
    {
        ["degF-days"] = RuleUnit.DegreeDaysF,
        ["degC-days"] = RuleUnit.DegreeDaysC,
    };

    /// <summary>The units of temperature, with their keys in a pack.</summary>
    public static IReadOnlyDictionary<string, RuleUnit> Temperatures { get; } = new Dictionary<string, RuleUnit>
    {
        ["degF"] = RuleUnit.DegF,
        ["degC"] = RuleUnit.DegC,
    };

    private static readonly Dictionary<string, RuleUnit> Speeds = new()
    {
        ["mph"] = RuleUnit.Mph,
        ["m/s"] = RuleUnit.MetersPerSecond,
    };

    private static readonly Dictionary<string, RuleUnit> Durations = new()
    {
        ["min"] = RuleUnit.Minutes,
        ["h"] = RuleUnit.Hours,
    };

    private static readonly Dictionary<string, RuleUnit> Water = new()
    {
        ["in"] = RuleUnit.WaterInches,
        ["mm"] = RuleUnit.WaterMillimeters,
    };

    private static readonly Dictionary<string, RuleUnit> Depths = new()
    {
        ["in"] = RuleUnit.Inches,
        ["cm"] = RuleUnit.Centimeters,
    };

    private static readonly Dictionary<string, RuleUnit> Percentages = new()
    {
        ["percent"] = RuleUnit.Percent,
    };

    private static readonly Dictionary<string, RuleUnit> None = [];

    public static string Symbol(this RuleUnit unit) => unit switch
    {
        RuleUnit.DegF => "°F",
        RuleUnit.DegC => "°C",
        RuleUnit.Mph => "mph",
        RuleUnit.MetersPerSecond => "m/s",
        RuleUnit.Minutes => "min",
        RuleUnit.Hours => "h",
        RuleUnit.WaterInches or RuleUnit.Inches => "in",
        RuleUnit.WaterMillimeters => "mm",
        RuleUnit.Centimeters => "cm",
        RuleUnit.Percent => "%",
        RuleUnit.DegreeDaysF => "°F-days",
        RuleUnit.DegreeDaysC => "°C-days",
    };

    /// <summary>A value of a rule's unit in the unit of the signals.</summary>
    public static double ToSignalUnit(this RuleUnit unit, double value) => unit switch
    {
        RuleUnit.DegF => Temperature.FromDegreesFahrenheit(value).DegreesCelsius,
        RuleUnit.Mph => Speed.FromMilesPerHour(value).MetersPerSecond,
        RuleUnit.Hours => value * 60,
        RuleUnit.WaterInches => Length.FromInches(value).Millimeters,
        RuleUnit.Inches => Length.FromInches(value).Centimeters,
        RuleUnit.DegreeDaysF => value / 1.8,
        RuleUnit.DegC or RuleUnit.MetersPerSecond or RuleUnit.Minutes or RuleUnit.WaterMillimeters
            or RuleUnit.Centimeters or RuleUnit.Percent or RuleUnit.DegreeDaysC => value,
    };

    /// <summary>A value in the unit of the signals in a rule's unit.</summary>
    public static double FromSignalUnit(this RuleUnit unit, double value) => unit switch
    {
        RuleUnit.DegF => Temperature.FromDegreesCelsius(value).DegreesFahrenheit,
        RuleUnit.Mph => Speed.FromMetersPerSecond(value).MilesPerHour,
        RuleUnit.Hours => value / 60,
        RuleUnit.WaterInches => Length.FromMillimeters(value).Inches,
        RuleUnit.Inches => Length.FromCentimeters(value).Inches,
        RuleUnit.DegreeDaysF => value * 1.8,
        RuleUnit.DegC or RuleUnit.MetersPerSecond or RuleUnit.Minutes or RuleUnit.WaterMillimeters
            or RuleUnit.Centimeters or RuleUnit.Percent or RuleUnit.DegreeDaysC => value,
    };

    /// <summary>Reads a number, a space and a unit, such as '8 in'.</summary>
    /// <param name="text">The text.</param>
    /// <param name="units">The units that may stand there, with their keys.</param>
    /// <param name="accepted">What may stand there.</param>
    /// <returns>Null for another form, another unit, or a value beyond any weather on record.</returns>
    public static Threshold? Parse(string? text, IReadOnlyDictionary<string, RuleUnit> units, out string accepted)
    {
        accepted = $"a number, a space and a unit ({string.Join(" or ", units.Keys)})";
        if (text?.Split(' ') is not [var number, var unit]
            || !double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture, out var value)
            || !units.TryGetValue(unit, out var known))
        {
            return null;
        }
        var (lowest, highest) = Bounds(known);
        accepted = $"{lowest} to {highest} {unit}";
        return value >= lowest && value <= highest ? new(value, known) : null;
    }

    /// <summary>
    /// Beyond any weather on record, so that what lies outside has another unit or a slip of the pen.
    /// </summary>
    private static (double Lowest, double Highest) Bounds(RuleUnit unit) => unit switch
    {
        RuleUnit.DegF => (-130, 180),
        RuleUnit.DegC => (-90, 80),
        RuleUnit.Mph => (0, 260),
        RuleUnit.MetersPerSecond => (0, 120),
        RuleUnit.Minutes => (0, 1440),
        RuleUnit.Hours => (0, 24),
        RuleUnit.WaterInches => (0, 100),
        RuleUnit.WaterMillimeters => (0, 2500),
        RuleUnit.Inches => (0, 400),
        RuleUnit.Centimeters => (0, 1000),
        RuleUnit.Percent => (0, 100),
        RuleUnit.DegreeDaysF or RuleUnit.DegreeDaysC => (0, 20_000),
    };
}
