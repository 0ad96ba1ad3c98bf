using NodaTime;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Tests.Evaluation;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Chances.Verification;

/// <summary>docs/validation.md has the whole check, of twelve stations; this is a small part of it.</summary>
public class BacktestTests
{
    private const int LeadDays = 15;

    private static readonly BacktestPlan LateWinter = new(
        [new(2, 1), new(2, 21), new(3, 11), new(4, 1)], LeadDays, Years: 30);

    private static readonly BacktestResult Urbana = Backtest.Of(
        new(new("Urbana", 40.08, -88.24), DateTimeZoneProviders.Tzdb["America/Chicago"], ReferenceStations.Urbana,
            [Given.Task("hinge-cut", "IL", [SpeciesGroup.RedOak])]),
        ShippedPacks.Read(), LateWinter);

    [Fact]
    public void Of_IsBetterThanClimatology_AtEveryLead() => Assert.All(
        Urbana.ByLead, lead => Assert.True(lead.Brier < lead.BrierOfClimatology, $"{lead}"));

    [Fact]
    public void Of_IsMuchBetterTomorrow() => Assert.InRange(Urbana.ByLead[0].Skill, 0.3, 1);

    [Fact]
    public void Of_IsReliable_InTheMiddle()
    {
        var seventy = Urbana.Reliability[7];

        Assert.InRange(seventy.Days, 50, 1000);
        Assert.InRange(seventy.Share, 0.6, 0.8);
    }

    [Fact]
    public void Of_TellsLeafOutInEightSpringsOfTen()
    {
        var held = Urbana.LeafOut.Count(spring => spring.P10 <= spring.Came && spring.Came <= spring.P90);

        Assert.InRange((double)held / Urbana.LeafOut.Length, 0.7, 0.95);
        Assert.InRange(Urbana.LeafOut.Select(spring => spring.Issued.Year).Distinct().Count(), 20, 30);
    }

    [Fact]
    public void Of_NamesTheRulesThatItLeavesOut()
    {
        Assert.Contains("wind.gust-close", Urbana.LeftOut);
        Assert.DoesNotContain("hinge.cold-run", Urbana.LeftOut);
        Assert.DoesNotContain("season.full-leaf", Urbana.LeftOut);
    }

    [Fact]
    public void Of_FindsNothing_WithoutARecord() => Assert.Same(
        BacktestResult.None,
        Backtest.Of(
            new(new("nowhere", 40, -88), DateTimeZone.Utc, DailySeries.Empty, [Given.HingeCut]),
            ShippedPacks.Read(), LateWinter));
}
