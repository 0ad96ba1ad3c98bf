using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

public class ExplanationTests
{
    [Fact]
    public void Of_GivesValueThresholdMarginAndBasis()
    {
        var evaluation = new PointRules(
            [Given.Pack(Given.Rule("closes", "signal: min-temperature, below: 20 degF, days-in-a-row: 3"))],
            Given.Signals((SignalKind.MinTemperatureC, [0, -10, -10, -10]))).Evaluate(Given.HingeCut);

        var explanation = Explanation.Of(evaluation, Given.First.PlusDays(3));

        var finding = Assert.IsType<SignalFinding>(Assert.Single(Assert.Single(explanation.Deciding).Findings));
        Assert.Equal(14, finding.Value!.Value, 6);    // -10 °C
        Assert.Equal(6, finding.Margin!.Value, 6);    // 20 - 14
        Assert.Equal(3, finding.RunLength);
        Assert.Equal(Basis.Observed, finding.Basis);
        Assert.Equal(
            "minimum temperature 14 °F (observed); limit: below 20 °F for 3 days in a row (so far 3)",
            Wording.Of(finding));
    }

    [Fact]
    public void Of_SaysWhatIsMissing_OnAnUnknownDay()
    {
        var evaluation = new PointRules([Given.Pack(Given.Rule("closes", "signal: gust, at-least: 25 mph"))],
            Given.Signals((SignalKind.MinTemperatureC, [0]))).Evaluate(Given.HingeCut);

        var verdict = Assert.Single(Explanation.Of(evaluation, Given.First).Deciding);

        Assert.Equal(Truth.Unknown, verdict.Truth);
        Assert.Equal("gusts not known; limit: at least 25 mph", Wording.Of(Assert.Single(verdict.Findings)));
    }

    [Fact]
    public void Of_SaysThatTheInventoryIsMissing()
    {
        var evaluation = new PointRules(
            [Given.Pack(
                Given.Rule("closes", "signal: gust, at-least: 1 mph", "traits: [wounds-trees], species: [red-oak]"))],
            Given.Signals((SignalKind.GustMps, [5]))).Evaluate(Given.HingeCut);

        Assert.True(Assert.Single(Explanation.Of(evaluation, Given.First).Deciding).InventoryMissing);
    }

    [Fact]
    public void Of_ListsTheRulesThatDidNotSpeakToo()
    {
        var evaluation = new PointRules(
            [Given.Pack(Given.Rule("closes", "signal: gust, at-least: 25 mph"), Given.Rule(
                "closes", "signal: gust, at-least: 10 mph"))],
            Given.Signals((SignalKind.GustMps, [5]))).Evaluate(Given.HingeCut);

        var verdicts = Explanation.Of(evaluation, Given.First).Verdicts;

        Assert.Equal([false, true], verdicts.Select(verdict => verdict.Spoke));
    }

    [Fact]
    public void Of_RefusesADayOutsideTheSpan() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Explanation.Of(
            new PointRules([Given.Pack(Given.Rule("closes", "signal: gust, at-least: 25 mph"))],
                Given.Signals((SignalKind.GustMps, [5]))).Evaluate(Given.HingeCut),
            Given.First.PlusDays(1)));
}
