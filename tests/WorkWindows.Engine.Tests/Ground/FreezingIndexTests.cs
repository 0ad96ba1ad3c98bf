using CsCheck;
using WorkWindows.Engine.Ground;

namespace WorkWindows.Engine.Tests.Ground;

/// <summary>Definitions of the AMS Glossary and of Harris 1981 (annual) (S); sums worked out by hand.</summary>
public sealed class FreezingIndexTests
{
    [Theory]
    [InlineData(-5, 5)]
    [InlineData(0, 0)]
    [InlineData(7, 0)]
    [InlineData(double.NaN, double.NaN)]
    public void DegreeDaysC_AreThoseBelowFreezing(double meanC, double degreeDaysC) =>
        Assert.Equal(degreeDaysC, FreezingIndex.DegreeDaysC(meanC));

    [Theory]
    [InlineData("5 -10 -10 4 -10 6", 26, 30)] // a thaw takes 4 away from the seasonal index alone
    [InlineData("-10 -10 20 -5", 20, 25)] // cold after a warm spell that undid all is another season
    [InlineData("-10 -10 3 4 5 20 20", 20, 20)] // a summer at the end changes nothing
    [InlineData("5 3 8", 0, 0)]
    [InlineData("", 0, 0)]
    public void Indices_CreditThawsOrNot(string meansC, double seasonalCDays, double annualCDays)
    {
        double[] means = [.. meansC.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(double.Parse)];
        Assert.Equal(seasonalCDays, FreezingIndex.SeasonalCDays(means));
        Assert.Equal(annualCDays, FreezingIndex.AnnualCDays(means));
    }

    [Fact]
    public void Indices_HaveNoValue_WhenADayIsMissing()
    {
        Assert.Equal(double.NaN, FreezingIndex.SeasonalCDays([-5, double.NaN, 5]));
        Assert.Equal(double.NaN, FreezingIndex.AnnualCDays([-5, double.NaN, 5]));
    }

    [Fact]
    public void SeasonalCDays_NeverExceedTheAnnualOnes() => Gen.Double[-30, 30].Array.Sample(means =>
        FreezingIndex.SeasonalCDays(means) <= FreezingIndex.AnnualCDays(means) + 1e-9);
}
