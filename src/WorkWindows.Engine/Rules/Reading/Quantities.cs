using System.Globalization;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads numbers with their unit.</summary>
internal static class Quantities
{
    public static Threshold? Read(Entry entry, IReadOnlyDictionary<string, RuleUnit> units)
    {
        if (entry.Text?.Split(' ') is not [var number, var unit]
            || !double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture, out var value)
            || !units.TryGetValue(unit, out var known))
        {
            entry.Refuse($"a number, a space and a unit ({string.Join(" or ", units.Keys)})");
            return null;
        }
        var (lowest, highest) = Bounds(known);
        if (value >= lowest && value <= highest)
            return new(value, known);
        entry.Refuse($"{lowest} to {highest} {unit}");
        return null;
    }

    /// <summary>Beyond any weather on record, so that what lies outside has another unit or a slip of the pen.</summary>
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
