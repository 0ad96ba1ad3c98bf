using Shouldly;
using WorkWindows.Engine.Stands.Crowns;
using static WorkWindows.Engine.Tests.Stands.StandFormulaTests;

namespace WorkWindows.Engine.Tests.Stands;

/// <summary>
/// Bechtold 2003, Ek 1974 and Krajicek 1961 as coded in the USDA Forest Service's Forest Vegetation Simulator
/// (ls/cwcalc.f, commit 5c29887), worked out at a live crown of 40 % and a Hopkins index of 0.
/// </summary>
public sealed class CrownWidthTests
{
    [Theory]
    [InlineData("red maple", 10.78, 17.18, 21.72, 25.81)]
    [InlineData("sugar maple", 11.75, 17.91, 22.20, 26.49)]
    [InlineData("boxelder", 11.79, 17.97, 22.28, 26.59)]
    [InlineData("northern red oak", 10.00, 16.72, 22.36, 27.99)]
    [InlineData("white oak", 10.14, 17.24, 23.34, 29.43)]
    [InlineData("shagbark hickory", 10.50, 17.24, 22.73, 28.22)]
    [InlineData("black cherry", 10.42, 16.37, 20.81, 25.26)]
    [InlineData("white ash", 9.84, 16.32, 21.69, 27.05)]
    [InlineData("trembling aspen", 8.95, 15.14, 20.41, 25.68)]
    [InlineData("American basswood", 10.01, 16.15, 21.00, 25.84)]
    [InlineData("American elm", 11.56, 20.68, 28.97, 37.26)]
    [InlineData("American hornbeam", 10.94, 18.56, 25.09, 31.61)]
    [InlineData("American hophornbeam", 12.51, 18.08, 21.33, 24.58)]
    public void ForestGrownFt_At4And8And12And16In(string species, double at4, double at8, double at12, double at16)
    {
        double[] found = [.. new double[] { 4, 8, 12, 16 }
            .Select(dbhIn => CrownWidths.ForestGrownFt(Named(species), dbhIn, CrownSite.Assumed(0)).Low)];

        found.ShouldBe([at4, at8, at12, at16], 0.006);
    }

    [Theory]
    [InlineData("sugar maple", 60, 54)]
    [InlineData("trembling aspen", 60, 39)]
    [InlineData("American elm", 60, 50)]
    [InlineData("American hornbeam", 60, 42)]
    [InlineData("northern red oak", 100, 82)]
    [InlineData("red maple", 200, 42.04)]  // the diameter counts no further than 50 in
    [InlineData("boxelder", 60, 57)]
    [InlineData("white oak", 60, 69)]
    [InlineData("shagbark hickory", 60, 54)]
    [InlineData("black cherry", 60, 52)]
    [InlineData("white ash", 60, 62)]
    [InlineData("American basswood", 60, 61)]
    [InlineData("American hophornbeam", 60, 39)]
    public void ForestGrownFt_StopsAtItsCap(string species, double dbhIn, double ft) =>
        CrownWidths.ForestGrownFt(Named(species), dbhIn, CrownSite.Assumed(0)).Low.ShouldBe(ft, 0.01);

    [Theory]
    [InlineData("red maple", 32.01, 32.01)]
    [InlineData("northern red oak", 24.55, 30.24)]
    [InlineData("white oak", 24.40, 24.40)]
    [InlineData("shagbark hickory", 28.17, 28.17)]
    [InlineData("American elm", 31.93, 31.93)]
    [InlineData("black cherry", 27.91, 27.91)]
    [InlineData("sugar maple", 27.72, 27.72)]
    public void OpenGrownFt_Of12In_IsARangeWhereTwoArePublished(string species, double lowFt, double highFt)
    {
        var width = CrownWidths.OpenGrownFt(Named(species), 12)!.Value;

        width.Low.ShouldBe(lowFt, 0.006);
        width.High.ShouldBe(highFt, 0.006);
    }

    [Fact]
    public void OpenGrownFt_IsNotKnown_WithoutAnEquation_AndFallsInProportionBelow3In()
    {
        CrownWidths.OpenGrownFt(Named("pin oak"), 12).ShouldBeNull();
        CrownWidths.OpenGrownFt(Named("white oak"), 1.5)!.Value.Low.ShouldBe((1.80 + (1.883 * 3)) / 2, 1e-9);
    }

    [Fact]
    public void Hopkins_OfAPlaceInWisconsin_NarrowsItsMaples()
    {
        var index = CrownSite.Hopkins(900, 44.5, -89.5);

        index.ShouldBe(28.695, 0.0005);
        CrownWidths.ForestGrownFt(Named("red maple"), 8, CrownSite.Assumed(index)).Low.ShouldBe(16.391, 0.0005);
    }
}
