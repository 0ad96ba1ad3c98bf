using NodaTime;
using NodaTime.Text;
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

    // Equinoxes and solstices of 2018, UTC (Skyfield manual, JPL DE421): the sun's apparent longitude is then a
    // multiple of 90°. It moves 0.01° in a quarter of an hour.
    [Theory]
    [InlineData("2018-03-20T16:15:27Z", 0)]
    [InlineData("2018-06-21T10:07:18Z", 90)]
    [InlineData("2018-09-23T01:54:06Z", 180)]
    [InlineData("2018-12-21T22:22:44Z", 270)]
    public void At_StandsAtTheSeasons(string instant, double longitudeDeg)
    {
        var sinceEpoch = InstantPattern.ExtendedIso.Parse(instant).Value - Instant.FromUtc(2000, 1, 1, 12, 0);

        var off = (SunPosition.At(sinceEpoch.TotalDays / 36525).ApparentLongitudeDeg - longitudeDeg) % 360;

        Assert.InRange(off > 180 ? off - 360 : off, -0.01, 0.01);
    }
}
