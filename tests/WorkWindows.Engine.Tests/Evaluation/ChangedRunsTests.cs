using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

public class ChangedRunsTests
{
    // From 1 January 2026 on.
    private static readonly SignalSet Signals =
        Given.Signals((SignalKind.MinTemperatureC, [-10, -10, 0, double.NaN, 5, 5]));

    private static readonly string Cold = Given.Rule("closes", "signal: min-temperature, below: -5 degC");
    private static readonly string Frost = Given.Rule("closes", "signal: min-temperature, below: 1 degC");
    private static readonly string Care = Given.Rule("limits", "signal: min-temperature, below: 10 degC");

    [Fact]
    public void Between_IsEmpty_WhenThePacksSayTheSame() =>
        Assert.Empty(Changes(Given.Pack(Cold), Given.Pack(Cold)));

    [Fact]
    public void Between_GivesTheDaysThatASharperLimitCloses() =>
        Assert.Equal(["2026-01-03 2026-01-03 Open Closed r0"], Changes(Given.Pack(Cold), Given.Pack(Frost)));

    [Fact]
    public void Between_GivesTheDaysThatARuleNoLongerCloses_AsARunOfEqualDays() =>
        Assert.Equal(
            ["2026-01-01 2026-01-02 Closed Open r0", "2026-01-04 2026-01-04 Unknown Open r0"],
            Changes(Given.Pack(Cold), Given.Pack(Given.Rule("closes", "signal: min-temperature, below: -40 degC",
                "practices: [prescribed-burn]"))));

    [Fact]
    public void Between_NamesOnlyTheRulesThatMakeTheDifference() =>
        // Where one closes, it does not matter that the other also limits; where neither closes, it does.
        Assert.Equal(
            [
                "2026-01-03 2026-01-03 Closed Limited r0 r1", "2026-01-05 2026-01-06 Open Limited r1",
            ],
            Changes(Given.Pack(Frost), Given.Pack(Cold, Care)));

    [Fact]
    public void Between_GivesTheChangesOfTheDaysAskedForAlone() =>
        Assert.Equal(
            ["2026-01-02 2026-01-02 Closed Limited r0 r1"],
            Changes(Given.Pack(Cold), Given.Pack(Given.Rule("favours", "signal: min-temperature, below: 0 degC"), Care),
                new DaySpan(Given.First.PlusDays(1), 1)));

    [Fact]
    public void Between_RefusesEvaluationsOfOtherSpans() =>
        Assert.Throws<ArgumentException>(() => ChangedRuns.Between(
            Evaluated(Given.Pack(Cold), Signals),
            Evaluated(Given.Pack(Cold), Given.Signals((SignalKind.MinTemperatureC, [0]))), Signals.Span).ToArray());

    private static IEnumerable<string> Changes(RulePack before, RulePack after, DaySpan? days = null) => ChangedRuns
        .Between(Evaluated(before, Signals), Evaluated(after, Signals), days ?? Signals.Span)
        .Select(run => $"{run.First:R} {run.Last:R} {run.Before} {run.After} {string.Join(' ', run.RuleIds)}");

    private static TaskEvaluation Evaluated(RulePack pack, SignalSet signals) =>
        new PointRules([pack], signals).Evaluate(Given.HingeCut);
}
