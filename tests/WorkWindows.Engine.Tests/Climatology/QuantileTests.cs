using CsCheck;
using WorkWindows.Engine.Climatology;

namespace WorkWindows.Engine.Tests.Climatology;

public class QuantileTests
{
    private static readonly double[] Five = [15, 20, 35, 40, 50];
    private static readonly double[] Springs = [98, 101, 105, 109, 112, 115, 117, 119, 121, 126];
    private static readonly double[] Thirty = [.. Enumerable.Range(1, 30).Select(day => (double)day)];

    // The examples of a spreadsheet's help page for PERCENTILE.EXC. It refuses 0.15 and 0.9 of five values, for which
    // the formula has no two ranks; here the smallest and the largest value stand.
    [Theory]
    [InlineData(0.4, 26)]
    [InlineData(0.5, 35)]
    [InlineData(0.8, 48)]
    [InlineData(0.15, 15)]
    [InlineData(0.9, 50)]
    public void Of_Weibull_IsThatOfSpreadsheets(double share, double expected) =>
        Assert.Equal(expected, Quantile.Of(Five, share, QuantileType.Weibull), 1e-9);

    // C, computed with NumPy 1.24, whose methods are the types of Hyndman and Fan 1996 in their order. Type 3 of ten
    // springs at 0.25 falls on rank 2 exactly; that release gave 105 there, the definition's even rank gives 101.
    [Theory]
    [InlineData("five", 0.25, new[] { 20, 20, 15, 16.25, 18.75, 17.5, 20, 18.3333, 18.4375 })]
    [InlineData("five", 0.40, new[] { 20, 27.5, 20, 20, 27.5, 26, 29, 27, 27.125 })]
    [InlineData("five", 0.75, new[] { 40, 40, 40, 38.75, 42.5, 45, 40, 43.3333, 43.125 })]
    [InlineData("five", 0.80, new[] { 40, 45, 40, 40, 45, 48, 42, 46, 45.75 })]
    [InlineData("springs", 0.10, new[] { 98, 99.5, 98, 98, 99.5, 98.3, 100.7, 99.1, 99.2 })]
    [InlineData("springs", 0.25, new[] { 105, 105, 101, 103, 105, 104, 106, 104.6667, 104.75 })]
    [InlineData("springs", 0.50, new[] { 112, 113.5, 112, 112, 113.5, 113.5, 113.5, 113.5, 113.5 })]
    [InlineData("springs", 0.90, new[] { 121, 123.5, 121, 121, 123.5, 125.5, 121.5, 124.1667, 124 })]
    [InlineData("thirty", 0.10, new[] { 3, 3.5, 3, 3, 3.5, 3.1, 3.9, 3.3667, 3.4 })]
    [InlineData("thirty", 0.90, new[] { 27, 27.5, 27, 27, 27.5, 27.9, 27.1, 27.6333, 27.6 })]
    public void Of_GivesEachTypesValue(string values, double share, double[] byType)
    {
        var sample = values switch
        {
            "five" => Five,
            "springs" => Springs,
            _ => Thirty,
        };

        foreach (var type in Enum.GetValues<QuantileType>())
            Assert.Equal(byType[(int)type - 1], Quantile.Of(sample.Reverse(), share, type), 0.0001);
    }

    [Fact]
    public void Of_IsNoMoreThanTheLargest_WhenTheLastStepIsRounded() =>
        Assert.Equal(
            24.121216521904973, Quantile.Of([132.0 / 79, 24.121216521904973], 1, QuantileType.NearestEvenRank));

    [Fact]
    public void Of_LiesBetweenTheSmallestAndTheLargest_AndGrowsWithTheShare() =>
        Gen.Select(Gen.Double[-50, 50].Array[1, 40], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Enum<QuantileType>())
            .Sample((values, one, other, type) =>
            {
                var low = Quantile.Of(values, Math.Min(one, other), type);
                var high = Quantile.Of(values, Math.Max(one, other), type);
                return values.Min() <= low && low <= high && high <= values.Max();
            });

    [Fact]
    public void Of_RefusesNoValues_AndSharesThatAreNone()
    {
        Assert.Throws<ArgumentException>(() => Quantile.Of([], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.Of(Five, 1.1));
    }
}
