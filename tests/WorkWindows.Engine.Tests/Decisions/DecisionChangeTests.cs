using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Decisions;

public class DecisionChangeTests
{
    private static readonly RulePack Pack = Given.Pack(
        Given.Rule("closes", "signal: min-temperature, below: -10 degC"),
        Given.Rule("closes", "signal: min-temperature, above: 10 degC"));

    [Theory]
    [InlineData("0 0 0", 1, "0 0 0", 1, false)]
    [InlineData("0 0 0", 1, "0 -20 0", 1, true)]
    [InlineData("0 5 0", 1, "0 0 0", 1, false)]       // other values, the same answer
    [InlineData("-20 0 0", 1, "0 0 -20", 2, false)]   // the day that passed and the day that came into view
    [InlineData("0 0 -20", 1, "0 0 0", 2, true)]      // the third day is shared
    [InlineData("-20 0 0", 1, "20 0 0", 1, true)]     // closed as before, but by another rule
    [InlineData("0 gap 0", 1, "0 0 0", 1, true)]      // what was unknown is known now
    [InlineData("0 0", 1, "0 0", 3, true)]            // no day in common
    [InlineData("0 0", 2, "0 0", 1, true)]            // the later one starts earlier: it says more
    public void Between_ComparesTheSharedDays(string before, int beforeFrom, string after, int afterFrom, bool changed) =>
        Assert.Equal(changed, DecisionChange.Between(Decide(before, beforeFrom), Decide(after, afterFrom)));

    private static byte[] Decide(string minimaC, int from)
    {
        double[] values = [.. minimaC.Split(' ').Select(night => night == "gap" ? double.NaN : int.Parse(night))];
        var span = new DaySpan(new LocalDate(2026, 1, from), values.Length);
        var signals = SignalSet.Of("test", span, [Given.Signal(SignalKind.MinTemperatureC, span, values)], []);
        var evaluation = new PointRules([Pack], signals).Evaluate(Given.HingeCut);
        return [.. DecisionRecord.Of(evaluation, span, "").Content];
    }
}
