using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;
using static WorkWindows.Engine.Evaluation.DayState;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>docs/rules/oak-wilt.md. Girdling wounds trees and is bound to no season.</summary>
public class OakWiltTests
{
    [Theory]
    // Michigan DNR 2018-2024 (S2): 15 Apr-15 Jul high, to leaf-off caution, Nov to mid-Mar none
    [InlineData("MI", 4, 15, 7, 15, Limited, Closed, Limited)]
    [InlineData("MI", 7, 16, 10, 31, Closed, Limited, Open)]
    [InlineData("MI", 3, 16, 4, 14, Open, Limited, Closed)]
    // Wisconsin DNR 2018-2019 (S), pruning Apr-Jul (S2); low risk to 30 Sep
    [InlineData("WI", 4, 1, 7, 31, Open, Closed, Limited)]
    [InlineData("WI", 8, 1, 9, 30, Closed, Limited, Open)]
    // Minnesota DNR 2016-2023 (S2): Apr-Jul, Aug-Oct what is left, Nov-Feb none
    [InlineData("MN", 4, 1, 7, 31, Limited, Closed, Limited)]
    [InlineData("MN", 8, 1, 10, 31, Closed, Limited, Open)]
    [InlineData("MN", 3, 1, 3, 31, Open, Limited, Closed)]
    // Iowa DNR 2019-2026 (S): about 15 Mar-mid Oct; notice of 17 Feb 2026
    [InlineData("IA", 3, 15, 10, 15, Limited, Closed, Open)]
    [InlineData("IA", 2, 17, 3, 14, Open, Limited, Closed)]
    // Univ. of Illinois Extension 2005-08 (S): Apr-Jun, others to Jul; then to autumn
    [InlineData("IL", 4, 1, 7, 31, Open, Closed, Limited)]
    [InlineData("IL", 8, 1, 10, 31, Closed, Limited, Open)]
    // Ohio State Univ. Extension 2023 (S): 15 Apr-15 Oct
    [InlineData("OH", 4, 15, 10, 15, Open, Closed, Open)]
    // Missouri Dept. of Conservation 2016 (S): mid-Mar-June
    [InlineData("MO", 3, 15, 6, 30, Open, Closed, Open)]
    // New York DEC 2017-18 (S): Oct-Feb none
    [InlineData("NY", 3, 1, 9, 30, Open, Closed, Open)]
    // Ferguson Twp. 2016 (S2): 1 Apr-31 Oct, common practice elsewhere in the state
    [InlineData("PA", 4, 1, 10, 31, Open, Closed, Open)]
    // No Indiana text: common practice from the neighbours' widest dates
    [InlineData("IN", 4, 1, 10, 15, Limited, Closed, Limited)]
    [InlineData("IN", 3, 16, 3, 31, Open, Limited, Closed)]
    [InlineData("IN", 10, 16, 10, 31, Closed, Limited, Open)]
    public void State_ChangesAtTheAgencysDates(
        string state, int fromMonth, int fromDay, int toMonth, int toDay,
        DayState before, DayState inside, DayState after)
    {
        var task = Given.Task("girdling", state, [SpeciesGroup.RedOak]);
        LocalDate from = new(2026, fromMonth, fromDay), to = new(2026, toMonth, toDay);

        Assert.Equal(
            [before, inside, inside, after],
            new[] { from.PlusDays(-1), from, to, to.PlusDays(1) }.Select(day => Shipped.StateOn(day, task)));
    }

    [Theory]
    [InlineData("girdling", new[] { SpeciesGroup.WhiteOak }, Closed)]
    [InlineData("girdling", new[] { SpeciesGroup.Maple, SpeciesGroup.RedOak }, Closed)]
    [InlineData("girdling", new[] { SpeciesGroup.Maple }, Open)]
    [InlineData("girdling", null, Unknown)]                             // nobody has looked for oaks
    [InlineData("frill-herbicide", new[] { SpeciesGroup.RedOak }, Closed)]
    [InlineData("cleanup", new[] { SpeciesGroup.RedOak }, Open)]        // cuts what is down
    public void State_DependsOnOaksAndWounds_InTheHighPeriod(
        string practice, SpeciesGroup[]? species, DayState expected) =>
        Assert.Equal(expected, Shipped.StateOn(new(2026, 5, 20), Given.Task(practice, "MI", species)));

    // Dates of agencies and starts moved by weather together: three days above 60 °F in March.
    [Theory]
    [InlineData("MI", "LLCCC")]     // caution from 16 March, else closed from 15 April
    [InlineData("OH", "OOCCC")]     // nothing before 15 April
    [InlineData("MN", "LLCCC")]
    public void State_IsClosedFromTheThirdWarmDay_BeforeTheAgencysDates(string state, string states)
    {
        var span = DaySpan.Between(new(2026, 1, 25), new(2026, 3, 24));
        LocalDate firstWarm = new(2026, 3, 20);
        double[] maxima =
            [.. Enumerable.Range(0, span.Count).Select(day => Shipped.DegC(span[day] < firstWarm ? 32 : 61))];
        var evaluation = Shipped.Evaluate(
            span, Given.Task("girdling", state, [SpeciesGroup.RedOak]),
            new() { [SignalKind.MaxTemperatureC] = maxima, [SignalKind.ThunderChancePercent] = new double[span.Count] },
            null);

        Assert.Equal(
            states,
            string.Concat(Enumerable.Range(0, 5).Select(day => evaluation[firstWarm.PlusDays(day)].ToString()[0])));
    }

    // A state without a pack has the earliest start (Texas) and the latest end (Ohio) of the dates that were read.
    [Theory]
    [InlineData(1, 31, Open)]
    [InlineData(2, 1, Closed)]
    [InlineData(10, 15, Closed)]
    [InlineData(10, 16, Open)]
    public void State_FollowsTheWidestDates_WhereNoStatePackSpeaks(int month, int day, DayState expected) =>
        Assert.Equal(
            expected, Shipped.StateOn(new(2026, month, day), Given.Task("girdling", "KY", [SpeciesGroup.RedOak])));
}
