using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class DegreeDaysTests
{
    [Theory]
    // McMaster and Wilhelm 1997, table 1, method 1, base 0 °C.
    [InlineData(20, 10, 15)]
    [InlineData(10, 1, 5.5)]
    [InlineData(8, -2, 3)]
    [InlineData(6, 0, 3)]
    [InlineData(10, 5, 7.5)]
    [InlineData(5, -5, 0)]
    [InlineData(-2, -7, 0)]
    [InlineData(-5, -10, 0)]
    [InlineData(10, -2, 4)]
    [InlineData(15, 2, 8.5)]
    public void SimpleAverage_MatchesPublishedTable(double max, double min, double degreeDays) =>
        Assert.Equal(degreeDays, DegreeDays.SimpleAverage(min, max, 0), 1e-9);

    [Theory]
    [InlineData(82, 61, 21.5)] // Democrat & Chronicle, 30 May 2013
    [InlineData(65, 40, 2.5)] // Michigan State University Extension, "Calculating growing degree days"
    [InlineData(60, 35, 0)] // the same
    public void SimpleAverage_MatchesWorkedExamples_InBase50F(double maxF, double minF, double degreeDaysF) =>
        Assert.Equal(degreeDaysF, DegreeDays.SimpleAverage(minF, maxF, 50), 1e-9);

    [Theory]
    // Computed in the reference (phenology and vectors, T4), °F.
    [InlineData(50, 35, 60, null, 0)]
    [InlineData(50, 30, 55, null, 0)]
    [InlineData(41, 28, 52, null, 0)]
    [InlineData(41, 33, 47, null, 0)]
    [InlineData(41, 38, 60, null, 8)]
    [InlineData(50, 60, 95, 86, 27.5)]
    [InlineData(50, 40, 92, 86, 16)]
    [InlineData(50, 86, 96, 86, 36)] // a mean above the limit counts as the limit
    public void SimpleAverage_MatchesComputedCases(
        double lowerF, double minF, double maxF, int? upperF, double degreeDaysF) => Assert.Equal(
        degreeDaysF, DegreeDays.SimpleAverage(minF, maxF, lowerF, upperF ?? double.PositiveInfinity), 1e-9);

    [Fact]
    public void SimpleAverage_HasNoValue_WhenATemperatureIsMissing() =>
        Assert.Equal(double.NaN, DegreeDays.SimpleAverage(double.NaN, 20, 4));

    [Fact]
    public void SimpleAverage_RefusesAMinimumAboveTheMaximum() =>
        Assert.Throws<ArgumentException>(() => DegreeDays.SimpleAverage(12, 10, 4));
}
