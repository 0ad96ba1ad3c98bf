using NodaTime;
using Shouldly;
using WorkWindows.Engine.Phenology;
using WorkWindows.Service.Records;

namespace WorkWindows.Service.Tests.Records;

/// <summary>Springs that bring the same heat every day, by the model of leaf-out from March.</summary>
public sealed class HeatChartTests
{
    private const int Days = 101;

    private static readonly ThermalTime Model = LeafOut.Default.FromMarch;

    [Fact]
    public void Of_ComparesThisYearWithPastOnes()
    {
        // Past years of 1 to 15 °C-days a day: P10, P50 and P90 of type 8 are 1.867, 8 and 14.133.
        var heat = HeatChart.Of([.. Past(15), Season(2026, 5, 20, 13)], Model, 2026)!;

        heat.Days[0].ShouldBe(new(new(2026, 3, 22), 9, false, 3, 14, 25));
        heat.Days[19].ShouldBe(new(new(2026, 4, 10), 180, true, 67, 288, 509));
        heat.Days[20].SumF.ShouldBeNull();
        heat.NeededF.ShouldBe(Math.Round(Model.RequiredDegreeDaysC * 1.8));
        heat.BaseF.ShouldBe(Math.Round(Model.BaseC * 1.8 + 32, 1));
        heat.PastYears.Count.ShouldBe(15);
        RecordWords.Of(heat, new(2026, 4, 5)).ShouldBe(
            $"By Fri 10 Apr 180 °F-days, with the forecast, the median of 15 past years 288; leaf-out needs {heat.NeededF} °F-days.");
    }

    [Fact]
    public void Of_EndsWhereEvenAColdYearHasTwiceWhatIsNeeded() =>
        HeatChart.Of([.. Past(15).Select(season => season with { SumsC = Sums(10, Days) })], Model, 2026)!
            .Days.Count.ShouldBe((int)Math.Ceiling(2 * Model.RequiredDegreeDaysC / 10));

    [Fact]
    public void Of_ShowsThisYearAlone_WithFewerThanFifteenPastYears()
    {
        var heat = HeatChart.Of([.. Past(14), Season(2026, 5, 20, 20)], Model, 2026)!;

        (heat.Days[5].SumF, heat.Days[5].P50, heat.PastYears.Count).ShouldBe((54, null, 0));
        RecordWords.Of(heat, new(2026, 4, 11)).ShouldStartWith("By Fri 10 Apr 180 °F-days; leaf-out needs");
    }

    [Fact]
    public void Of_LeavesOutAPastYearThatIsNotWhole() =>
        HeatChart.Of([.. Past(15), Season(2010, 5, 100, 100)], Model, 2026)!.PastYears.ShouldNotContain(2010);

    [Fact]
    public void Of_SaysWhenTheSumBegins_BeforeSpring() =>
        RecordWords.Of(HeatChart.Of(Past(15), Model, 2026)!, new(2026, 2, 3)).ShouldBe(
            "The sum begins on Sun 22 Mar; leaf-out needs 209 °F-days. Half of the 15 past years have as much by Sun 5 Apr.");

    // 116 °C-days, at 6 °C-days a day on the twentieth.
    [Theory]
    [InlineData(20, "The 209 °F-days that leaf-out needs were there on Fri 10 Apr.")]
    [InlineData(19, "The 209 °F-days that leaf-out needs come, by the forecast, on Fri 10 Apr.")]
    public void Of_SaysWhenLeafOutHadItsHeat_OnceItHas(int observed, string words) =>
        RecordWords.Of(HeatChart.Of([.. Past(15), Season(2026, 6, Days, observed)], Model, 2026)!, new(2026, 11, 25))
            .ShouldBe($"{words} Half of the 15 past years have as much by Sun 5 Apr.");

    [Fact]
    public void Of_IsNone_WithoutThisYearAndEnoughOthers() => HeatChart.Of(Past(14), Model, 2026).ShouldBeNull();

    private static List<HeatSeason> Past(int years) =>
        [.. Enumerable.Range(1, years).Select(heatC => Season(2010 + heatC, heatC, Days, Days))];

    private static HeatSeason Season(int year, double heatC, int days, int observed) =>
        new(year, Sums(heatC, days), observed);

    private static System.Collections.Immutable.ImmutableArray<double> Sums(double heatC, int days) =>
        [.. Enumerable.Range(1, Days).Select(day => day <= days ? day * heatC : double.NaN)];
}
