using WorkWindows.Engine.Climatology;

namespace WorkWindows.Engine.Tests.Climatology;

public class QuantileTests
{
    private static readonly double[] Dates = [98, 101, 105, 109, 112, 115, 117, 119, 121, 126];
    private static readonly double[] Five = [15, 20, 35, 40, 50];

    // C, computed with NumPy 1.24, method median_unbiased, which is type 8 of Hyndman and Fan 1996.
    [Theory]
    [InlineData(0.25, 18.3333)]
    [InlineData(0.40, 27)]
    [InlineData(0.75, 43.3333)]
    [InlineData(0.80, 46)]
    [InlineData(0, 15)]
    [InlineData(1, 50)]
    public void Of_FiveValues(double share, double expected) => Assert.Equal(expected, Quantile.Of(Five, share), 0.0001);

    [Theory]
    [InlineData(0.10, 99.1)]
    [InlineData(0.25, 104.6667)]
    [InlineData(0.50, 113.5)]
    [InlineData(0.90, 124.1667)]
    public void Of_TenSprings(double share, double expected) =>
        Assert.Equal(expected, Quantile.Of(Dates.Reverse(), share), 0.0001);

    [Theory]
    [InlineData(0.10, 3.3667)]
    [InlineData(0.90, 27.6333)]
    public void Of_ThirtyYears(double share, double expected) =>
        Assert.Equal(expected, Quantile.Of(Enumerable.Range(1, 30).Select(day => (double)day), share), 0.0001);

    [Fact]
    public void Of_RefusesNoValues_AndSharesThatAreNone()
    {
        Assert.Throws<ArgumentException>(() => Quantile.Of([], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.Of(Five, 1.1));
    }
}
