using Shouldly;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Hours;

namespace WorkWindows.Engine.Tests.Stands;

/// <summary>
/// Hoffman 1986 (Maine Agricultural Experiment Station Bulletin 813), Soucy and Beland 2020 (Silva Fennica 54(3) 10205),
/// Campu and Ciubotaru 2017 (Silva Fennica 51(2) 1657), University of Minnesota Woodland Stewardship, NRCS Ohio job sheet
/// 647 (2015).
/// </summary>
public sealed class WorkRatesTests
{
    [Fact]
    public void CuttingHours_Of200SmallStemsAnAcre()
    {
        var hours = WorkRates.CuttingHours([(6, 200)]);

        hours.Low.ShouldBe(1.89, 0.005);
        hours.High.ShouldBe(2.22, 0.005);
        WorkRates.CuttingHours([(8, 1000)]).High.ShouldBe(11.11, 0.005);
    }

    [Fact]
    public void CuttingHours_Of8LargeTrees_WithAnAssistant() => WorkRates.CuttingHours([(20, 8)]).Low.ShouldBe(1.76, 0.005);

    [Fact]
    public void CuttingPersonHours_CountTheAssistant()
    {
        // The same eight trees, 13.19 min each, and two people.
        WorkRates.CuttingPersonHours([(20, 8)]).Low.ShouldBe(3.52, 0.005);
        WorkRates.CuttingPersonHours([(6, 200)]).ShouldBe(WorkRates.CuttingHours([(6, 200)]));
        var between = WorkRates.CuttingPersonHours([(12, 60)]);
        (Math.Round(between.Low, 2), Math.Round(between.High, 2)).ShouldBe((0.67, 27.72));
    }

    [Theory]
    [InlineData(8, 0.567, 0.667)]
    [InlineData(8.1, 0.667, 13.86)]   // not published: the range spans both
    [InlineData(16, 0.667, 13.86)]
    [InlineData(16.1, 13.19, 13.86)]
    public void RateFor_ADiameter(double dbhIn, double leastMinutes, double mostMinutes)
    {
        var minutes = WorkRates.RateFor(dbhIn).MinutesATree;

        (Math.Round(minutes.Low, 3), Math.Round(minutes.High, 3)).ShouldBe((leastMinutes, mostMinutes));
    }

    [Fact]
    public void CropTreeRelease_Of12Acres()
    {
        (WorkRates.CropTreeReleaseHoursPerAcre * 12).Low.ShouldBe(10.3, 0.05);
        (WorkRates.CropTreeReleaseHoursPerAcre * 12).High.ShouldBe(22.1, 0.05);
    }

    [Theory]
    [InlineData(200, 60.0 / 90, 0, 0, 1, 2.22)]
    [InlineData(200, 60.0 / 145, 0, 0, 0.73, 1.89)]
    [InlineData(60, 0.5, 45, 2, 1, 2.0)]
    public void HoursPerAcre_OfCuttingAndSearching(
        double cut, double minutes, double kept, double search, double worked, double hours) =>
        WorkRates.HoursPerAcre(cut, minutes, kept, search, worked).ShouldBe(hours, 0.005);

    [Fact]
    public void PlantingDays_Of6AcresAt8Feet()
    {
        var days = WorkRates.PlantingDays(6 * PlotFormulas.StemsPerAcreAt(8));

        days.High.ShouldBe(4.08, 0.005);
        days.Low.ShouldBe(1.36, 0.005);
    }

    [Theory]
    [InlineData(100, 100, 0, 50, 1, 0.1148)]
    [InlineData(600, 100, 100, 50, 3, 0.344)]
    [InlineData(99, 100, 100, 50, 0, 0)]
    public void EdgeFeathering_OfAnEdge(double edgeFt, double blockFt, double gapFt, double depthFt, int blocks, double acres)
    {
        EdgeFeathering.Blocks(edgeFt, blockFt, gapFt).ShouldBe(blocks);
        EdgeFeathering.Acres(edgeFt, blockFt, gapFt, depthFt).ShouldBe(acres, 0.0005);
    }

    /// <summary>Our own formula, so its rows are worked out by hand: the sixth root of 2³ is the square root of 2.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 1.18921)]
    [InlineData(3, 1.41421)]
    public void CrewPace_IsDrawnTowardsTheEstimate_WithFewRecords(int jobsOfDoubleTime, double pace) =>
        CrewPace.Of([.. Enumerable.Repeat((10.0, 20.0), jobsOfDoubleTime)]).ShouldBe(pace, 1e-5);

    [Fact]
    public void CrewPace_RefusesAJobOfNoHours() =>
        Should.Throw<ArgumentOutOfRangeException>(() => CrewPace.Of([(10, 0)]));
}
