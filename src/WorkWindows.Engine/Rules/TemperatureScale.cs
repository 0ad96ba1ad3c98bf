namespace WorkWindows.Engine.Rules;

/// <summary>The scales in which people speak of temperature.</summary>
public enum TemperatureScale
{
    Fahrenheit,
    Celsius,
}

/// <summary>Limits in the scale that their reader thinks in.</summary>
public static class TemperatureScales
{
    /// <summary>The same unit of the scale; a unit of something else stays as it is.</summary>
    public static RuleUnit In(this RuleUnit unit, TemperatureScale scale) => (unit, scale) switch
    {
        (RuleUnit.DegF or RuleUnit.DegC, TemperatureScale.Fahrenheit) => RuleUnit.DegF,
        (RuleUnit.DegF or RuleUnit.DegC, TemperatureScale.Celsius) => RuleUnit.DegC,
        (RuleUnit.DegreeDaysF or RuleUnit.DegreeDaysC, TemperatureScale.Fahrenheit) => RuleUnit.DegreeDaysF,
        (RuleUnit.DegreeDaysF or RuleUnit.DegreeDaysC, TemperatureScale.Celsius) => RuleUnit.DegreeDaysC,
        _ => unit,
    };

    /// <summary>The same limit in the unit of the scale; one that is in it already, or is no temperature, as it is.</summary>
    public static Threshold In(this Threshold threshold, TemperatureScale scale)
    {
        var unit = threshold.Unit.In(scale);
        return unit == threshold.Unit ? threshold : new(unit.FromSignalUnit(threshold.InSignalUnit), unit);
    }
}
