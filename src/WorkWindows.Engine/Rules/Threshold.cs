using UnitsNet;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>A limit in the unit that its source states it in.</summary>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
public sealed record Threshold(double Value, RuleUnit Unit)
{
    /// <summary>The limit in the unit of the signals: °C, m/s or minutes.</summary>
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
}

/// <summary>The keys, symbols and conversions of the units of rule packs.</summary>
public static class RuleUnits
{
    /// <summary>The units that a signal may be compared in, with their keys in a pack.</summary>
    public static IReadOnlyDictionary<string, RuleUnit> For(SignalKind signal) => signal switch
    {
        SignalKind.MinTemperatureC or SignalKind.MaxTemperatureC => Temperatures,
        SignalKind.WindMps or SignalKind.GustMps => Speeds,
        SignalKind.DarkShiftMinutes or SignalKind.LightShiftMinutes => Durations,
    };

    public static string Symbol(this RuleUnit unit) => unit switch
    {
        RuleUnit.DegF => "°F",
        RuleUnit.DegC => "°C",
        RuleUnit.Mph => "mph",
        RuleUnit.MetersPerSecond => "m/s",
        RuleUnit.Minutes => "min",
        RuleUnit.Hours => "h",
    };

    /// <summary>A value of a rule's unit in the unit of the signals: °C, m/s or minutes.</summary>
    public static double ToSignalUnit(this RuleUnit unit, double value) => unit switch
    {
        RuleUnit.DegF => Temperature.FromDegreesFahrenheit(value).DegreesCelsius,
        RuleUnit.Mph => Speed.FromMilesPerHour(value).MetersPerSecond,
        RuleUnit.Hours => value * 60,
        RuleUnit.DegC or RuleUnit.MetersPerSecond or RuleUnit.Minutes => value,
    };

    /// <summary>A value in the unit of the signals in a rule's unit.</summary>
    public static double FromSignalUnit(this RuleUnit unit, double value) => unit switch
    {
        RuleUnit.DegF => Temperature.FromDegreesCelsius(value).DegreesFahrenheit,
        RuleUnit.Mph => Speed.FromMetersPerSecond(value).MilesPerHour,
        RuleUnit.Hours => value / 60,
        RuleUnit.DegC or RuleUnit.MetersPerSecond or RuleUnit.Minutes => value,
    };

    private static readonly Dictionary<string, RuleUnit> Temperatures = new()
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
}
