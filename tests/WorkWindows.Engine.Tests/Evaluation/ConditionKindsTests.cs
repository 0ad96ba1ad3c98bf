using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

/// <summary>
/// Each kind of condition on days that a reader can follow by hand. The days are those from 1 January 2026.
/// </summary>
public class ConditionKindsTests
{
    private const double Gap = double.NaN;

    [Theory]
    [InlineData("0 5 5 0 0 9", "UUCCOO")]    // 10 mm by the third and by the fourth day, then less
    [InlineData("0 5 gap 9 0 0", "UUUCUO")]  // what is missing can only add: 5 and 9 are enough, 9 alone is not
    public void TotalOver_CountsADayWithoutAValueAsMissing(string rainMm, string states) => Assert.Equal(
        states,
        Closed("signal: precipitation, total-over-days: 3, at-least: 10 mm", SignalKind.PrecipitationMm, rainMm));

    [Theory]
    [InlineData("0 0 0", "OOO")]
    [InlineData("0 gap 0", "OUU")]
    public void TotalOver_IsNotSurelyLow_WhenAValueIsMissing(string rainMm, string states) => Assert.Equal(
        states.Replace('O', 'C'),
        Closed("signal: precipitation, total-over-days: 2, at-most: 4 mm", SignalKind.PrecipitationMm, "0 " + rainMm)[1..]);

    [Theory]
    [InlineData("60 84 60 54 60", "UCCOO")]   // frozen from 83 on, through 60, thawed below 55, and 60 is not frozen again
    [InlineData("84 60 gap 60 84", "CCUUC")]  // in the gap it may have thawed
    public void Latch_KeepsItsStateBetweenTheLimits(string index, string states) => Assert.Equal(
        states,
        Closed(
            "signal: frozen-ground-index, starts: { at-least: 83 degC-days }, ends: { below: 55 degC-days }",
            SignalKind.FrozenGroundIndexC, index));

    [Theory]
    [InlineData("9 11 9 9 11", "OCCCO")]      // from the second day on, until the fourth
    [InlineData("9 9 9 9 11", "OOOOO")]       // too late
    [InlineData("9 gap 9 11 9", "OUUCO")]     // it may have come in the gap
    public void Onset_HoldsFromTheFirstTimeUntilTheRangeEnds(string warmthC, string states) => Assert.Equal(
        states,
        Closed(
            "onset: { signal: max-temperature, above: 10 degC }, within: { from: 01-01, to: 01-04 }",
            SignalKind.MaxTemperatureC, warmthC));

    [Theory]
    [InlineData("0 0 1 0", "OOCO")]
    [InlineData("0 gap 1 0", "OUCO")]
    public void Alert_IsUnknown_WhenNobodyCouldBeAsked(string redFlag, string states) =>
        Assert.Equal(states, Closed("alert: red-flag", SignalKind.RedFlagAlert, redFlag));

    // 60/40 °F is exactly no heat above a mean of 50 °F; 65/40 is 2.5 (Michigan State University Extension).
    [Theory]
    [InlineData("65/40 65/40 60/40 65/40", "OCCC")]
    [InlineData("65/40 gap 65/40 65/40", "OUCC")]   // two known days are enough
    [InlineData("65/40 gap 60/40 60/40", "OUUU")]   // a day without a value is not a day without heat
    public void HeatSince_AddsUpFromItsDate(string highLowF, string states)
    {
        var days = highLowF.Split(' ');
        var signals = Given.Signals(
            (SignalKind.MaxTemperatureC, [.. days.Select(day => DegC(day, 0))]),
            (SignalKind.MinTemperatureC, [.. days.Select(day => DegC(day, 1))]));
        var rule = Given.Rule(
            "closes", "degree-days: { method: simple-average, base: 50 degF, since: 01-01 }, at-least: 5 degF-days");

        Assert.Equal(states, Given.States([Given.Pack(rule)], signals, Given.HingeCut));

        static double DegC(string day, int part) => day == "gap" ? Gap : (int.Parse(day.Split('/')[part]) - 32) / 1.8;
    }

    [Fact]
    public void HeatSince_IsUnknown_WhenItsDateLiesBeforeTheSignals()
    {
        var rule = Given.Rule(
            "closes", "degree-days: { method: simple-average, base: 0 degC, since: 12-31 }, at-least: 5 degC-days");
        var signals = Given.Signals((SignalKind.MaxTemperatureC, [0, 9]), (SignalKind.MinTemperatureC, [0, 9]));

        Assert.Equal("UC", Given.States([Given.Pack(rule)], signals, Given.HingeCut));
    }

    // A triangle over the south of Michigan.
    [Theory]
    [InlineData(42.3, -84.5, "C")]
    [InlineData(45.0, -84.5, "O")]
    [InlineData(42.3, -86.9, "O")]
    [InlineData(Gap, Gap, "U")]        // nobody said where the parcel lies
    public void Area_HoldsTheParcelsInside(double latitudeDeg, double longitudeDeg, string state)
    {
        var pack = Given.Pack(Given.Rule(
            "closes", "calendar: { on: 01-01 }", "area: [[41.7, -86.5], [41.7, -82.5], [44.0, -84.5]]"));
        var facts = Given.HingeCut with
        {
            Place = double.IsNaN(latitudeDeg) ? null : new Place(latitudeDeg, longitudeDeg),
        };

        Assert.Equal(state, Given.States([pack], Given.Signals((SignalKind.GustMps, [0])), facts));
    }

    [Theory]
    [InlineData("Dune Woods", "C")]
    [InlineData("Lake Woods", "O")]
    [InlineData(null, "U")]            // nobody said who plans it
    public void Organization_IsMeantByItsName(string? organization, string state) => Assert.Equal(
        state,
        Given.States(
            [Given.Pack(Given.Rule("closes", "calendar: { on: 01-01 }", "organizations: [Dune Woods]"))],
            Given.Signals((SignalKind.GustMps, [0])), Given.HingeCut with { Organization = organization }));

    [Theory]
    [InlineData("signal: gust, at-least: 25 mph", "2026-03-10")]
    [InlineData("signal: gust, at-least: 25 mph, days-in-a-row: 3", "2026-03-08")]
    [InlineData("signal: precipitation, total-over-days: 10, at-least: 1 in", "2026-03-01")]
    [InlineData(
        "degree-days: { method: single-sine, base: 50 degF, since: 01-01 }, at-least: 5 degF-days", "2026-01-01")]
    [InlineData(
        "degree-days: { method: single-sine, base: 50 degF, since: 11-01 }, at-least: 5 degF-days", "2025-11-01")]
    [InlineData("signal: frost-depth, starts: { at-least: 6 in }, ends: { below: 3 in }", "2025-07-01")]
    [InlineData(
        "onset: { signal: gust, above: 5 mph, days-in-a-row: 3 }, within: { from: 02-01, to: 04-30 }", "2026-01-30")]
    [InlineData(
        "any: [{ not: { signal: gust, above: 5 mph, days-in-a-row: 3 } }, { calendar: { on: 01-01 } }]", "2026-03-08")]
    public void Lookback_ReachesToTheFirstDayThatMatters(string when, string first) => Assert.Equal(
        first, $"{Lookback.Before(new LocalDate(2026, 3, 10), [Given.Pack(Given.Rule("closes", when))]):R}");

    private static string Closed(string when, SignalKind kind, string values) => Given.States(
        [Given.Pack(Given.Rule("closes", when))],
        Given.Signals((kind, [.. values.Split(' ').Select(value => value == "gap" ? Gap : double.Parse(value))])),
        Given.HingeCut);
}
