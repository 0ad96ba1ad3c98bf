using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>Constants as in the open R package chillR (S), figures computed from them (C).</summary>
public sealed class ChillTests
{
    [Theory]
    [InlineData(-0.1, 0)]
    [InlineData(0, 1)]
    [InlineData(7.2, 1)]
    [InlineData(7.3, 0)]
    public void Hours_CountFromFreezingToSevenDegrees(double airC, double hours) =>
        Assert.Equal(hours, Chill.Hours([airC]));

    [Theory]
    [InlineData(1.4, 0)]
    [InlineData(1.5, 0.5)]
    [InlineData(2.4, 0.5)]
    [InlineData(2.5, 1)]
    [InlineData(9.1, 1)]
    [InlineData(9.2, 0.5)]
    [InlineData(12.4, 0.5)]
    [InlineData(12.5, 0)]
    [InlineData(15.9, 0)]
    [InlineData(16, -0.5)]
    [InlineData(18, -0.5)]
    [InlineData(18.1, -1)]
    public void UtahUnits_ChangeAtEachEdge(double airC, double units) => Assert.Equal(units, Chill.UtahUnits([airC]));

    [Theory]
    [InlineData(0, 3.327, 12.478)]
    [InlineData(2, 18.720, 64.395)]
    [InlineData(4, 21.246, 72.838)]
    [InlineData(6, 24.433, 83.063)]
    [InlineData(8, 24.401, 83.372)]
    [InlineData(10, 23.313, 78.048)]
    [InlineData(12, 18.001, 61.004)]
    [InlineData(13, 0, 0)]
    public void DynamicPortions_MatchComputedValues_OfConstantTemperature(double airC, double month, double winter)
    {
        Assert.Equal(month, Chill.DynamicPortions(Constant(airC, 720)), 0.00051);
        Assert.Equal(winter, Chill.DynamicPortions(Constant(airC, 2400)), 0.00051);
    }

    [Fact]
    public void DynamicPortions_AreKept_WhenWarmthFollows()
    {
        var cold = Constant(6, 720);
        Assert.Equal(
            Chill.DynamicPortions(cold), Chill.DynamicPortions([.. cold, .. Constant(25, 240)]), tolerance: 1);
    }

    [Fact]
    public void DynamicPortions_AreUndone_WhenWarmthComesBeforeThePortionIsFull()
    {
        double[] pulse = [.. Constant(6, 12), .. Constant(25, 12)];
        Assert.Equal(0, Chill.DynamicPortions([.. Enumerable.Repeat(pulse, 60).SelectMany(hours => hours)]));
    }

    [Theory]
    [InlineData(5, 0.1173)]
    [InlineData(10, 3.9534)]
    [InlineData(14.5, 10.5)]
    [InlineData(20, 18.197)]
    [InlineData(25, 21)]
    [InlineData(30, 7.2479)]
    [InlineData(3.9, 0)]
    [InlineData(4, 0)]
    [InlineData(36, 0)]
    [InlineData(36.1, 0)]
    public void GrowingDegreeHours_MatchComputedValues(double airC, double degreeHours) =>
        Assert.Equal(degreeHours, GrowingDegreeHours.Sum([airC]), 0.00051);

    [Fact]
    public void Sums_HaveNoValue_WhenAnHourIsMissing()
    {
        foreach (var hours in new double[][] { [double.NaN, 5, 5], [5, double.NaN, 5], [5, 5, double.NaN] })
        {
            Assert.Equal(double.NaN, Chill.Hours(hours));
            Assert.Equal(double.NaN, Chill.UtahUnits(hours));
            Assert.Equal(double.NaN, Chill.DynamicPortions(hours));
            Assert.Equal(double.NaN, GrowingDegreeHours.Sum(hours));
        }
    }

    [Fact]
    public void Sums_AreZero_WithoutHours() =>
        Assert.Equal([0, 0, 0, 0], (double[])
        [
            Chill.Hours([]), Chill.UtahUnits([]), Chill.DynamicPortions([]), GrowingDegreeHours.Sum([]),
        ]);

    private static double[] Constant(double airC, int hours) => [.. Enumerable.Repeat(airC, hours)];
}
