using Shouldly;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Sprouts;
using static WorkWindows.Engine.Tests.Stands.StandFormulaTests;

namespace WorkWindows.Engine.Tests.Stands;

/// <summary>
/// Lake States and southern Appalachian (Keyser and Loftis) coefficients of the USDA Forest Service's Forest Vegetation
/// Simulator (vstrp/essprt.f, commit 5c29887), and values worked out from them.
/// </summary>
public sealed class SproutingTests
{
    private static readonly double[] Diameters = [4, 8, 12, 16, 20];

    [Theory]
    [InlineData("white oak", .801, .760, .714, .662, .607)]
    [InlineData("northern red oak", .571, .557, .518, .442, .317)]
    [InlineData("black oak", .993, .982, .951, .876, .720)]
    [InlineData("sugar maple", .787, .683, .579, .474, .370)]
    public void LakeStates_CurvesFall(string species, double at4, double at8, double at12, double at16, double at20)
    {
        double[] found = [.. Diameters.Select(dbhIn => Sprouting.LakeStates(Named(species), dbhIn))];

        // 0.47415 of sugar maple at 16 in is printed .474.
        found.ShouldBe([at4, at8, at12, at16, at20], 0.00051);
    }

    [Theory]
    [InlineData("white oak", .773, .497, .223, .077, .024)]
    [InlineData("northern red oak", .943, .914, .872, .813, .735)]
    [InlineData("black oak", .905, .803, .635, .426, .241)]
    [InlineData("red maple", .970, .939, .882, .783, .635)]
    [InlineData("black cherry", .910, .867, .810, .734, .643)]   // the curve of all upland hardwoods
    [InlineData("American elm", .910, .867, .810, .734, .643)]
    [InlineData("bur oak", .910, .867, .810, .734, .643)]
    public void SouthernAppalachians_CurvesFall(
        string species, double at4, double at8, double at12, double at16, double at20)
    {
        double[] found = [.. Diameters.Select(dbhIn => Sprouting.SouthernAppalachians(Named(species), dbhIn))];

        found.ShouldBe([at4, at8, at12, at16, at20], 0.00051);
    }

    [Theory]
    [InlineData("red maple", 11.9, .80)]
    [InlineData("red maple", 12, .50)]
    [InlineData("silver maple", 11.9, .80)]
    [InlineData("silver maple", 12, .50)]
    [InlineData("black cherry", 11.9, .80)]
    [InlineData("black cherry", 12, .50)]
    [InlineData("white ash", 11.9, .80)]
    [InlineData("white ash", 12, .50)]
    [InlineData("green ash", 11.9, .80)]
    [InlineData("green ash", 12, .50)]
    [InlineData("black ash", 11.9, .80)]
    [InlineData("black ash", 12, .50)]
    [InlineData("black maple", 8, .683)]
    [InlineData("sugar maple", 34.2, 0)]
    [InlineData("boxelder", 14.9, .60)]
    [InlineData("boxelder", 15, .30)]
    [InlineData("American elm", 9, .70)]
    [InlineData("slippery elm", 9, .70)]
    [InlineData("rock elm", 9, .70)]
    [InlineData("American basswood", 9, .80)]
    [InlineData("bitternut hickory", 23.9, .95)]
    [InlineData("bitternut hickory", 24, .60)]
    [InlineData("shagbark hickory", 23.9, .95)]
    [InlineData("shagbark hickory", 24, .60)]
    [InlineData("pignut hickory", 23.9, .75)]
    [InlineData("pignut hickory", 24, .50)]
    [InlineData("ironwood", 9, .80)]
    [InlineData("musclewood", 9, .70)]
    [InlineData("bigtooth aspen", 9, .80)]
    [InlineData("paper birch", 9, .70)]
    [InlineData("yellow birch", 9, .30)]
    [InlineData("American beech", 9, .50)]
    [InlineData("bur oak", 9, .80)]
    [InlineData("swamp white oak", 8, .684)]   // nine tenths of white oak
    [InlineData("northern red oak", 26.2, 0)]
    [InlineData("hackberry", 7.9, .40)]
    [InlineData("hackberry", 8, .20)]
    [InlineData("black locust", 9, .90)]
    [InlineData("black willow", 9, .90)]
    [InlineData("flowering dogwood", 7.9, .70)]
    [InlineData("flowering dogwood", 8, .90)]
    [InlineData("apple", 9, .50)]
    [InlineData("hawthorn", 9, .70)]
    [InlineData("chokecherry", 9, .80)]
    [InlineData("northern pin oak", 9, .80)]
    [InlineData("black walnut", 7.9, .80)]
    [InlineData("black walnut", 8, .50)]
    [InlineData("butternut", 7.9, .30)]
    [InlineData("butternut", 8, 0)]
    [InlineData("mockernut hickory", 8, 1)]   // the model's default
    [InlineData("yellow-poplar", 8, 1)]
    public void LakeStates_Shares(string species, double dbhIn, double share) =>
        Sprouting.LakeStates(Named(species), dbhIn).ShouldBe(share, 0.00051);

    [Theory]
    [InlineData("sugar maple", .73)]
    [InlineData("black maple", .73)]
    [InlineData("boxelder", .94)]
    [InlineData("basswood", .99)]
    [InlineData("bitternut hickory", .95)]
    [InlineData("shagbark hickory", .95)]
    [InlineData("pignut hickory", .95)]
    [InlineData("ironwood", .94)]
    [InlineData("musclewood", .94)]
    [InlineData("beech", .93)]
    [InlineData("black locust", .86)]
    [InlineData("flowering dogwood", .94)]
    [InlineData("apple", .94)]
    [InlineData("paper birch", .3186)]   // 1 / (1 + e^-(3.3670 - .5159 x 8))
    [InlineData("yellow birch", .3186)]
    [InlineData("sweet birch", .3186)]
    public void SouthernAppalachians_Shares_At8In(string species, double share) =>
        Sprouting.SouthernAppalachians(Named(species), 8).ShouldBe(share, 0.0001);

    [Fact]
    public void Share_IsARange_WhereTheModelsDisagree_AndNothingWhereNoStumpSprouts()
    {
        var oak = Sprouting.Share(Named("white oak"), 8)!.Value;
        (Math.Round(oak.Low, 2), Math.Round(oak.High, 2)).ShouldBe((.50, .76));
        var hickory = Sprouting.Share(Named("mockernut hickory"), 8)!.Value;
        (Math.Round(hickory.Low, 3), hickory.High).ShouldBe((.867, 1));
        Sprouting.Share(Named("bigtooth aspen"), 8).ShouldBe(ValueRange.Of(.80), "the southern model does not have it");
        Sprouting.Share(Named("red pine"), 8).ShouldBeNull();
        Sprouting.Share(Named("quaking aspen"), 8).ShouldBeNull();
    }

    /// <summary>Forest Vegetation Simulator, Lake States variant: 2,608 to 30,125 an acre where 198 ft² are cut.</summary>
    [Theory]
    [InlineData(198, 2_608, 30_125)]
    [InlineData(99, 1_304, 15_062.5)]
    [InlineData(0, 0, 0)]
    public void Suckers_OfTremblingAspen_GoWithWhatIsCut(double cutFt2, double least, double most)
    {
        var suckers = Sprouting.SuckersPerAcre(cutFt2);

        (suckers.Low, suckers.High).ShouldBe((least, most));
    }

    [Theory]
    [InlineData("basswood", 4.9, 1)]
    [InlineData("basswood", 5, 1)]     // -1 + .4 x 5
    [InlineData("bigtooth aspen", 8, 2)]    // 2.2
    [InlineData("balsam poplar", 10, 3)]
    [InlineData("basswood", 10.1, 3)]
    [InlineData("red maple", 4.9, 1)]
    [InlineData("silver maple", 7, 1)]      // 1.4
    [InlineData("sugar maple", 7.5, 2)]     // 1.5
    [InlineData("black maple", 10.1, 2)]
    [InlineData("black ash", 12, 2)]
    [InlineData("northern red oak", 9, 2)]  // 1.8
    [InlineData("black locust", 11, 2)]
    [InlineData("white oak", 14, 1)]
    [InlineData("beech", 3.9, 1)]
    [InlineData("beech", 4, 0)]
    public void Kept_StemsOfAStump(string species, double dbhIn, int stems) =>
        SproutStems.Kept(Named(species), dbhIn).ShouldBe(stems);

    [Fact]
    public void HeightFt_OfThreeYearsOnASiteOf60() => SproutStems.HeightFt(60, 3).ShouldBe(3.9, 1e-9);
}
