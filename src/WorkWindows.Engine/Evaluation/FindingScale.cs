using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Findings in the scale of temperature that their reader thinks in.</summary>
public static class FindingScale
{
    /// <summary>The same finding with its value and its limit in the unit of the scale.</summary>
    public static Finding In(this Finding finding, TemperatureScale scale) => finding switch
    {
        SignalFinding signal => signal with
        {
            Compare = In(signal.Compare, scale),
            Value = In(signal.Value, signal.Compare.Threshold.Unit, scale),
        },
        LatchFinding latch => latch with
        {
            Latched = new(In(latch.Latched.Starts, scale), In(latch.Latched.Ends, scale)),
            Value = In(latch.Value, latch.Latched.Starts.Threshold.Unit, scale),
        },
        SumFinding sum => sum with
        {
            Sum = In(sum.Sum, scale),
            Known = In(sum.Known, sum.Sum.Threshold.Unit, scale)!.Value,
        },
        _ => finding,
    };

    private static Compare In(Compare compare, TemperatureScale scale) =>
        compare with { Threshold = compare.Threshold.In(scale) };

    private static Sum In(Sum sum, TemperatureScale scale) => sum is HeatSince heat
        ? heat with
        {
            Heat = heat.Heat with { Base = heat.Heat.Base.In(scale), Upper = heat.Heat.Upper?.In(scale) },
            Threshold = heat.Threshold.In(scale),
        }
        : sum with { Threshold = sum.Threshold.In(scale) };

    private static double? In(double? value, RuleUnit unit, TemperatureScale scale) =>
        value is { } known ? new Threshold(known, unit).In(scale).Value : null;
}
