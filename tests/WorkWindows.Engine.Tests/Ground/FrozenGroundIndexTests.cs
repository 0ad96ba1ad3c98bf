using WorkWindows.Engine.Ground;

namespace WorkWindows.Engine.Tests.Ground;

/// <summary>Molnau and Bissell 1983 as coded in a US Geological Survey model (S); series computed (C).</summary>
public sealed class FrozenGroundIndexTests
{
    [Fact]
    public void Over_MatchesComputedSeries_OfBareGround() => AssertSeries(
        [
            5, 9.85, 14.554, 19.118, 23.544, 27.838, 32.003, 36.043, 39.961, 43.763, 39.450, 35.266, 31.208,
        ],
        Index([.. Days(-5, 10), .. Days(3, 3)], Days(0, 13)));

    [Fact]
    public void Over_MatchesComputedSeries_OfTenCentimetresOfSnow() => AssertSeries(
        [3.631, 7.153, 10.569, 13.882, 17.097, 20.215, 23.239, 26.172, 29.018, 31.778],
        Index(Days(-5, 10), Days(10, 10)));

    [Fact]
    public void Over_MatchesComputedSeries_OfSnowThatCame() => AssertSeries(
        [
            10, 19.7, 29.109, 38.236, 47.089, 55.676, 60.194, 64.576, 68.826, 72.949, 76.949, 80.828, 78.304, 75.855,
            73.480, 71.176, 68.941,
        ],
        Index([.. Days(-10, 12), .. Days(2, 5)], [.. Days(0, 6), .. Days(15, 11)]));

    [Theory]
    [InlineData(0, 7, 64.006, 10, 87.525, 60, 279.731)]
    [InlineData(20, 13, 57.470, 21, 83.052, 90, 164.430)]
    public void Over_MatchesComputedDays_OfSteadyFrost(
        double snowDepthCm, int day56, double index56, int day83, double index83, int lastDay, double lastIndex)
    {
        var index = Index(Days(-10, lastDay), Days(snowDepthCm, lastDay));

        Assert.Equal(day56, Array.FindIndex(index, value => value >= 56) + 1);
        Assert.Equal(index56, index[day56 - 1], 0.00051);
        Assert.Equal(day83, Array.FindIndex(index, value => value >= 83) + 1);
        Assert.Equal(index83, index[day83 - 1], 0.00051);
        Assert.Equal(lastIndex, index[^1], 0.00051);
    }

    [Fact]
    public void Over_GoesOnFromItsStart()
    {
        var whole = Index(Days(-10, 20), Days(5, 20));
        var rest = new double[10];
        FrozenGroundIndex.Over(Days(-10, 10), Days(5, 10), rest, whole[9]);

        Assert.Equal(whole[10..], rest);
    }

    [Fact]
    public void Over_IsNeverNegative() => Assert.Equal([5, 0, 0], Index([-5, 20, 20], Days(0, 3)));

    [Fact]
    public void Over_HasNoValueFromAMissingDayOn_HoweverWarmItGrows()
    {
        Assert.Equal([5, double.NaN, double.NaN], Index([-5, double.NaN, 30], Days(0, 3)));
        Assert.Equal([5, double.NaN, double.NaN], Index([-5, -5, 30], [0, double.NaN, 0]));
    }

    [Fact]
    public void Over_NeedsNoSnowDepth_WhileNothingIsFrozenAndItIsMild() =>
        Assert.Equal([0, 0, 5], Index([3, 0, -5], [double.NaN, double.NaN, 0]));

    [Fact]
    public void Over_RefusesWhatCannotBe()
    {
        Assert.Throws<ArgumentException>(() => FrozenGroundIndex.Over([-5], [0, 0], new double[1]));
        Assert.Throws<ArgumentException>(() => FrozenGroundIndex.Over([-5], [-1], new double[1]));
        Assert.Throws<ArgumentException>(() => FrozenGroundIndex.Over([-5], [0], new double[1], -1));
    }

    private static double[] Index(double[] meansC, double[] snowDepthsCm)
    {
        var index = new double[meansC.Length];
        FrozenGroundIndex.Over(meansC, snowDepthsCm, index);
        return index;
    }

    private static double[] Days(double value, int count) => [.. Enumerable.Repeat(value, count)];

    private static void AssertSeries(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), pair => Assert.Equal(pair.First, pair.Second, 0.00051));
    }
}
