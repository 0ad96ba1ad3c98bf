using NodaTime;
using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>Forms after Chuine 2000 and Cannell and Smith 1983 (S); the days are worked out by hand.</summary>
public sealed class ForcingModelsTests
{
    private static readonly AnnualDate Start = new(1, 1);

    [Theory]
    [InlineData(10, 9)] // half a day's forcing a day: five days' worth on the tenth
    [InlineData(200, 4)] // a whole one
    [InlineData(-200, null)] // none
    public void Uniforc_ForcesHalfAtItsMiddle(double meanC, int? day) =>
        Assert.Equal(day, new Uniforc(Start, -0.5, 10, 5).ReachedAt(Constant(meanC, 60)));

    [Fact]
    public void Uniforc_ForcesAlongASigmoid()
    {
        // 1 / (1 + e^-1) = 0.73106 a day.
        var model = new Uniforc(Start, -0.5, 10, 0.7310 * 3);
        Assert.Equal(2, model.ReachedAt(Constant(12, 60)));
        Assert.Equal(3, (model with { RequiredForcing = 0.7311 * 3 }).ReachedAt(Constant(12, 60)));
    }

    [Theory]
    [InlineData(20, 29)] // chilled on the 20th day, which forces too
    [InlineData(19, null)]
    public void Unichill_ForcesFromTheDayItIsChilled(int coldDays, int? day)
    {
        // Half a day's chill at 0 °C and hardly any far from it; half a day's forcing at 20 °C.
        var model = new Unichill(Start, 1, 0, 0, 10, -5, 20, 5);
        Assert.Equal(day, model.ReachedAt([.. Constant(0, coldDays), .. Constant(20, 40)]));
    }

    [Fact]
    public void Unichill_ChillsToBothSidesOfItsMiddle_WhenItHasNoSlope()
    {
        var model = new Unichill(Start, 0.1, 0, 5, 10, -5, 20, 1);
        var (colder, warmer) = (Constant(3, 60), Constant(7, 60));
        Assert.Equal(
            model.ReachedAt([.. colder, .. Constant(20, 40)]), model.ReachedAt([.. warmer, .. Constant(20, 40)]));
    }

    [Theory]
    // -68 + 638 exp(-0.01 cold days) (S2), computed (C).
    [InlineData(0, 570)]
    [InlineData(50, 318.9666)]
    [InlineData(100, 166.7071)]
    [InlineData(150, 74.3570)]
    public void RequiredDegreeDaysC_FallsWithColdDays(int coldDays, double degreeDaysC) =>
        Assert.Equal(degreeDaysC, AlternatingHeat.Deciduous.RequiredDegreeDaysC(coldDays), 0.0001);

    [Theory]
    [InlineData(0, 56)] // 570 at 10 degree-days a day
    [InlineData(50, 81)] // 319
    [InlineData(100, 116)] // 167
    public void AlternatingHeat_NeedsLessHeat_TheMoreColdDaysThereWere(int coldDays, int day) => Assert.Equal(
        day, AlternatingHeat.Deciduous.ReachedAt([.. Constant(0, coldDays), .. Constant(15, 60)]));

    [Fact]
    public void AlternatingHeat_CountsADayAtItsBaseAsNeitherWarmNorCold() => Assert.Equal(
        156, AlternatingHeat.Deciduous.ReachedAt([.. Constant(5, 100), .. Constant(15, 60)]));

    [Fact]
    public void DayLengthThermalTime_IsThermalTime_WithoutPower()
    {
        var heat = new ThermalTime(Start, 5, 100);
        Assert.Equal(
            heat.ReachedAt(Constant(15, 60)),
            new DayLengthThermalTime(heat, 0).ReachedAt(Constant(15, 60), Constant(9, 60)));
    }

    [Fact]
    public void DayLengthThermalTime_CountsHalfTheHeat_OfADayOfTwelveHours() => Assert.Equal(
        19, new DayLengthThermalTime(new(Start, 5, 100), 1).ReachedAt(Constant(15, 60), Constant(12, 60)));

    [Fact]
    public void ReachedAt_HasNoDay_WhenADayIsMissing()
    {
        double[] means = [double.NaN, .. Constant(15, 200)];
        Assert.Null(new Uniforc(Start, -0.5, 10, 5).ReachedAt(means));
        Assert.Null(new Unichill(Start, 0, 0, 0, 5, -1, 10, 5).ReachedAt(means));
        Assert.Null(AlternatingHeat.Deciduous.ReachedAt(means));
        Assert.Null(new DayLengthThermalTime(new(Start, 5, 100), 1).ReachedAt(means, Constant(12, 201)));
    }

    private static double[] Constant(double value, int days) => [.. Enumerable.Repeat(value, days)];
}
