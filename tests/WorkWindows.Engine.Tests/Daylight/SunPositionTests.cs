using WorkWindows.Engine.Daylight;

namespace WorkWindows.Engine.Tests.Daylight;

/// <summary>Figures of the NOAA spreadsheet, as quoted in the test file of the open astral library.</summary>
public sealed class SunPositionTests
{
    [Theory]
    [InlineData(0.119986311, 0.016703588, -0.104951648, 279.959958, 23.436981, -23.063171, -3.078194825)]
    [InlineData(0.184134155, 0.016700889, 1.046852316, 70.475244, 23.435289, 22.014636, 2.232039737)]
    [InlineData(12.00844627, 0.016185564, -1.753028843, 232.065824, 23.285224, -18.166944, 16.58348133)]
    public void At_MatchesPublishedIntermediateValues(
        double centuries, double eccentricity, double center, double longitude, double obliquity, double declination,
        double equationOfTime)
    {
        var sun = SunPosition.At(centuries);

        // The published century has nine digits, which leaves the third value of the longitude 0.00002° open.
        Assert.Equal(eccentricity, sun.Eccentricity, 1e-9);
        Assert.Equal(center, sun.EquationOfCenterDeg, 1e-5);
        Assert.Equal(longitude, sun.ApparentLongitudeDeg, 2e-5);
        Assert.Equal(obliquity, sun.ObliquityDeg, 1e-6);
        Assert.Equal(declination, sun.DeclinationDeg, 1e-5);
        Assert.Equal(equationOfTime, sun.EquationOfTimeMin, 1e-5);
    }

    [Theory]
    [InlineData(0.184134155, 69.43779106)]
    [InlineData(12.00844627, 233.8203529)]
    public void At_MatchesPublishedMeanLongitude(double centuries, double longitude) =>
        Assert.Equal(longitude, SunPosition.At(centuries).MeanLongitudeDeg, 2e-5);
}
