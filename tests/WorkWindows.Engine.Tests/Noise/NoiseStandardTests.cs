using WorkWindows.Engine.Noise;

namespace WorkWindows.Engine.Tests.Noise;

public sealed class NoiseStandardTests
{
    [Theory]
    // 29 CFR 1910.95, table G-16, in the reprint of a mine noise rule (S2), which rounds; 85 dBA computed (C).
    [InlineData(85, 16, 0)]
    [InlineData(90, 8, 0)]
    [InlineData(92, 6, 0.07)]
    [InlineData(95, 4, 0)]
    [InlineData(97, 3, 0.04)]
    [InlineData(100, 2, 0)]
    [InlineData(102, 1.5, 0.02)]
    [InlineData(105, 1, 0)]
    [InlineData(110, 0.5, 0)] // a chain saw, typically
    [InlineData(115, 0.25, 0)]
    public void AllowedHours_MatchTheTableOfOsha_AsItRounds(double levelDba, double hours, double roundedByHours) =>
        Assert.Equal(hours, NoiseStandard.Osha.AllowedHours(levelDba), roundedByHours + 1e-9);

    [Theory]
    // The recommended limit is from memory, the figures computed (C).
    [InlineData(85, 8, 1e-9)]
    [InlineData(90, 2.52, 0.0051)]
    [InlineData(92, 1.59, 0.0051)]
    [InlineData(95, 0.79, 0.0051)]
    [InlineData(97, 0.50, 0.0051)]
    [InlineData(100, 0.25, 0.0051)]
    [InlineData(102, 0.157, 0.00051)]
    [InlineData(105, 0.079, 0.00051)]
    [InlineData(110, 0.0248, 0.000051)]
    [InlineData(115, 0.0078, 0.000051)]
    public void AllowedHours_MatchComputedValuesOfNiosh(double levelDba, double hours, double tolerance) =>
        Assert.Equal(hours, NoiseStandard.Niosh.AllowedHours(levelDba), tolerance);

    [Fact]
    public void AllowedHours_AreNone_AboveTheCeiling()
    {
        Assert.Equal(0, NoiseStandard.Osha.AllowedHours(115.1));
        Assert.Equal(double.PositiveInfinity, NoiseStandard.Osha.Dose((120, 0.01)));
        Assert.True(NoiseStandard.Niosh.AllowedHours(115.1) > 0);
    }

    [Fact]
    public void Dose_AddsSharesOfEachLimit()
    {
        Assert.Equal(1, NoiseStandard.Osha.Dose((110, 0.25), (90, 4)), 1e-9);
        Assert.Equal(1.5, NoiseStandard.Osha.Dose((110, 0.5), (90, 4)), 1e-9);
        Assert.Equal(0.5, NoiseStandard.Osha.Dose((85, 8)), 1e-9); // at which a hearing programme starts
        Assert.Equal(0, NoiseStandard.Osha.Dose());
        Assert.Equal(0, NoiseStandard.Osha.Dose((140, 0)));
    }

    [Fact]
    public void Dose_HasNoValue_WhenOneIsMissing()
    {
        Assert.Equal(double.NaN, NoiseStandard.Osha.Dose((90, 4), (double.NaN, 1)));
        Assert.Equal(double.NaN, NoiseStandard.Osha.Dose((90, double.NaN)));
    }

    [Fact]
    public void Dose_RefusesNegativeHours() =>
        Assert.Throws<ArgumentException>(() => NoiseStandard.Osha.Dose((90, -1)));
}
