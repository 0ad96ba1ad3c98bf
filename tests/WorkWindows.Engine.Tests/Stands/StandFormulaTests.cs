using CsCheck;
using Shouldly;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Crowns;

namespace WorkWindows.Engine.Tests.Stands;

/// <summary>
/// Vectors worked out from the published formulas (docs/rules/stands.md names each): basal area π/576 D² (University of
/// Missouri biometrics), the rest textbook forms from memory, Reineke 1933, Krajicek and others 1961, Gingrich 1967, and
/// the USDA Forest Service's Forest Vegetation Simulator for crowns and cover.
/// </summary>
public sealed class StandFormulaTests
{
    private static readonly CrownSite Site = CrownSite.Assumed(0);

    [Theory]
    [InlineData(1, .0055)]
    [InlineData(4, .0873)]
    [InlineData(5, .1363)]  // printed cut off; 0.13635
    [InlineData(6, .1963)]
    [InlineData(8, .3491)]
    [InlineData(10, .5454)]
    [InlineData(12, .7854)]
    [InlineData(14, 1.0690)]
    [InlineData(16, 1.3962)]  // printed with the rounded constant; π gives 1.3963
    [InlineData(18, 1.7671)]
    [InlineData(20, 2.1816)]
    [InlineData(24, 3.1415)]
    public void BasalAreaFt2_OfOneTree(double dbhIn, double ft2) =>
        TreeFormulas.BasalAreaFt2(dbhIn).ShouldBe(ft2, 0.00011);

    [Theory]
    [InlineData(4, .1955)]
    [InlineData(8, .5655)]
    [InlineData(12, 1.1275)]
    [InlineData(16, 1.8815)]
    public void MaximumCrownAreaPercent_OfOneTree(double dbhIn, double percent) =>
        TreeFormulas.MaximumCrownAreaPercent(dbhIn).ShouldBe(percent, 5e-5);

    [Theory]
    [InlineData(6, 1210.0)]
    [InlineData(8, 680.6)]
    [InlineData(10, 435.6)]
    [InlineData(12, 302.5)]
    [InlineData(15, 193.6)]
    [InlineData(20, 108.9)]
    [InlineData(25, 69.7)]
    [InlineData(33, 40.0)]
    public void StemsPerAcreAt_ASpacing(double spacingFt, double stems) =>
        PlotFormulas.StemsPerAcreAt(spacingFt).ShouldBe(stems, 0.05);

    [Theory]
    [InlineData(0.1, 37.24)]
    [InlineData(0.05, 26.33)]
    public void PlotRadiusFt_OfARoundPlot(double acres, double ft) => PlotFormulas.PlotRadiusFt(acres).ShouldBe(ft, 0.005);

    [Theory]
    [InlineData(5, 3.889)]
    [InlineData(10, 2.750)]
    [InlineData(20, 1.944)]
    public void PlotRadiusFactor_OfAGauge(double factor, double ftPerIn) =>
        PlotFormulas.PlotRadiusFactorFtPerIn(factor).ShouldBe(ftPerIn, 0.001);

    [Fact]
    public void Tallies_BecomeStemsAndBasalAreaAnAcre()
    {
        PlotFormulas.StemsPerAcre(7, 4_356).ShouldBe(70, 1e-9);
        PlotFormulas.PrismBasalAreaFt2PerAcre(8, 10).ShouldBe(80);
        PlotFormulas.StemsPerCountedTree(10, 10).ShouldBe(18.335, 0.0005);
    }

    [Theory]
    // Stems an acre, diameter: basal area, CCF, Gingrich stocking; NaN where the reference gives none.
    [InlineData(100, 10, 54.54, 82.25, 48.17)]
    public void Stand_OfOneSize(double stems, double dbhIn, double basalArea, double ccf, double stocking)
    {
        var stand = Of(("northern red oak", dbhIn, stems));

        stand.BasalAreaFt2PerAcre.ShouldBe(basalArea, 0.005);
        stand.CrownCompetitionPercent.ShouldBe(ccf, 0.005);
        stand.StockingPercent.ShouldBe(stocking, 0.005);
    }

    [Theory]
    [InlineData(200, 8, 139.79)]
    [InlineData(100, 14, 171.61)]
    public void DensityIndex_OfReineke(double stems, double meanIn, double index) =>
        Of(("white oak", meanIn, stems)).DensityIndex.ShouldBe(index, 0.005);

    [Theory]
    [InlineData(20, 18.13)]
    [InlineData(50, 39.35)]
    [InlineData(80, 55.07)]
    [InlineData(100, 63.21)]
    [InlineData(150, 77.69)]
    [InlineData(51.08, 40)]
    [InlineData(91.63, 60)]
    [InlineData(160.94, 80)]
    public void CanopyCover_OfCrownsThatOverlapAtRandom(double crownsPercent, double coverPercent)
    {
        CanopyCover.OfCrownAreaPercent(crownsPercent).ShouldBe(coverPercent, 0.005);
        CanopyCover.CrownAreaPercentFor(coverPercent).ShouldBe(crownsPercent, 0.03);
    }

    [Theory]
    // Red oak, live crown 40 %: stems and basal area for 60 % cover.
    [InlineData(6, 13.91, .3488, 262.7, 51.6)]
    [InlineData(8, 16.72, .5043, 181.7, 63.4)]
    [InlineData(10, 19.54, .6884, 133.1, 72.6)]
    [InlineData(12, 22.36, .9011, 101.7, 79.9)]
    [InlineData(14, 25.17, 1.1423, 80.2, 85.7)]
    [InlineData(16, 27.99, 1.4121, 64.9, 90.6)]
    public void SameCover_TakesMoreBasalAreaOfLargerTrees(
        double dbhIn, double crownFt, double percent, double stems, double basalArea)
    {
        var width = CrownWidths.ForestGrownFt(Named("northern red oak"), dbhIn, Site);
        width.IsOne.ShouldBeTrue();
        width.Low.ShouldBe(crownFt, 0.006);
        TreeFormulas.CrownAreaPercent(width.Low).ShouldBe(percent, 0.0001);
        var needed = CanopyCover.CrownAreaPercentFor(60) / TreeFormulas.CrownAreaPercent(width.Low);
        needed.ShouldBe(stems, 0.05);
        Of(("northern red oak", dbhIn, needed)).BasalAreaFt2PerAcre.ShouldBe(basalArea, 0.05);
    }

    [Theory]
    [InlineData(0, 220, 84.65, 8.40, 166.3, 119.9, 69.8, 133.1, 78.0)]
    [InlineData(1, 100, 61.08, 10.58, 109.5, 72.9, 51.7, 90.3, 52.7)]
    [InlineData(2, 60, 47.12, 12.00, 80.4, 54.1, 41.8, 67.7, 39.3)]
    public void WorkedStand_AfterEachRemoval(
        int step, double stems, double basalArea, double mean, double index, double crowns, double cover, double ccf,
        double stocking)
    {
        var stand = Of(("northern red oak", 12, 60), ("red maple", 6, 120), ("American basswood", 8, 40));
        if (step > 0)
            stand = stand.Without((one, _) => one.Species.Name == "red maple" ? 1 : 0);
        if (step > 1)
            stand = stand.Without((one, _) => one.Species.Name == "American basswood" ? 1 : 0);

        stand.StemsPerAcre.ShouldBe(stems);
        // 61.087 is printed 61.08.
        stand.BasalAreaFt2PerAcre.ShouldBe(basalArea, 0.0075);
        stand.QuadraticMeanDiameterIn!.Value.ShouldBe(mean, 0.005);
        stand.DensityIndex.ShouldBe(index, 0.06);
        stand.CrownAreaPercent.Low.ShouldBe(crowns, 0.06);
        stand.CanopyCoverPercent.Low.ShouldBe(cover, 0.06);
        stand.CrownCompetitionPercent.ShouldBe(ccf, 0.06);
        stand.StockingPercent.ShouldBe(stocking, 0.06);
    }

    [Fact]
    public void CanopyCover_IsARange_WhereASpeciesHasNoEquation()
    {
        var cover = Of(("pin oak", 8, 100)).CanopyCoverPercent;

        // Quaking aspen has the narrowest crown of 8 in, American elm the widest.
        cover.Low.ShouldBe(CanopyCover.OfCrownAreaPercent(100 * TreeFormulas.CrownAreaPercent(15.14)), 0.05);
        cover.High.ShouldBe(CanopyCover.OfCrownAreaPercent(100 * TreeFormulas.CrownAreaPercent(20.68)), 0.05);
    }

    [Fact]
    public void NothingStanding_CoversNothing_AndHasNoMean()
    {
        var stand = Of();
        (stand.BasalAreaFt2PerAcre, stand.DensityIndex, stand.CanopyCoverPercent, stand.QuadraticMeanDiameterIn)
            .ShouldBe((0, 0, ValueRange.Of(0), null));
    }

    [Fact]
    public void Without_NeverLeavesMore_OfAnything() =>
        Gen.Select(Gen.Double[0.5, 30], Gen.Double[1, 300], Gen.Double[0, 1]).Array[1, 6].Sample(classes =>
        {
            var all = SpeciesCatalogue.All;
            var stand = Of([.. classes.Select((one, index) => (all[index * 7 % all.Length].Name, one.Item1, one.Item2))]);
            var left = stand.Without((_, place) => classes[place].Item3);

            left.BasalAreaFt2PerAcre.ShouldBeLessThanOrEqualTo(stand.BasalAreaFt2PerAcre);
            left.CanopyCoverPercent.High.ShouldBeLessThanOrEqualTo(stand.CanopyCoverPercent.High);
            stand.CanopyCoverPercent.Low.ShouldBeInRange(0, stand.CanopyCoverPercent.High);
        });

    internal static Stand Of(params (string Species, double DbhIn, double Stems)[] classes) =>
        new([.. classes.Select(one => new StemClass(Named(one.Species), one.DbhIn, one.Stems))], Site);

    internal static Species Named(string name) => SpeciesCatalogue.Find(name)!;
}
