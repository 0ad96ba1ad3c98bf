using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Rules;

public sealed class RuleLimitsTests
{
    [Theory]
    [InlineData("signal: min-temperature, below: 20 degF, days-in-a-row: 3", "MinTemperatureC Below 20")]
    [InlineData("all: [{ signal: max-temperature, above: 32 degF }, { signal: gust, below: 20 mph }]", "MaxTemperatureC Above 32")]
    [InlineData(
        "any: [{ signal: min-temperature, at-least: 20 degF }, { not: { signal: max-temperature, at-most: 5 degC } }]",
        "MinTemperatureC AtLeast 20, MaxTemperatureC AtMost 5")]
    [InlineData("calendar: { from: 08-01, to: 08-31 }", "")]
    public void Of_FindsTheLimitsOfASignal_HoweverDeepTheyLie(string when, string limits)
    {
        var rule = Given.Pack(Given.Rule("closes", when)).Rules[0];

        var found = RuleLimits.Of(rule, SignalKind.MinTemperatureC, SignalKind.MaxTemperatureC);

        Assert.Equal(limits, string.Join(
            ", ", found.Select(limit => $"{limit.Signal} {limit.Relation} {limit.Threshold.Value}")));
    }
}
