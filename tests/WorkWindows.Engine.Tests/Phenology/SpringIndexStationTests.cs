using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// Thirty springs of Urbana IL (USC00118740, NOAA GHCN-Daily, Menne et al. 2012, doi:10.7289/V5D21VHZ), 1985-2014.
/// </summary>
public sealed class SpringIndexStationTests
{
    private const double LatitudeDeg = 40.0839;

    private readonly Dictionary<int, SpringIndex> springs = ReadYears().ToDictionary(
        year => year.Key,
        year => SpringIndex.Over(
            SpringGaps.Filled(year.Value.MaxF)!, SpringGaps.Filled(year.Value.MinF)!, LatitudeDeg));

    [Fact]
    public void Over_MatchesPublishedYear() =>
        Assert.Equal((73, 116), (springs[1990].LeafDay, springs[1990].BloomDay));

    // The toolbox's output has means of 88.0 and 116.5 (S) over the station's whole record, most of it before 1985. Of
    // its other stations with published means no record is at hand.
    [Fact]
    public void Over_LiesNearPublishedMeans_AndBeforeThem()
    {
        Assert.Equal(30, springs.Count);
        Assert.Equal(85.7, springs.Values.Average(spring => spring.LeafDay!.Value), 0.05);
        Assert.Equal(113.9, springs.Values.Average(spring => spring.BloomDay!.Value), 0.05);
    }

    private static Dictionary<int, (double[] MaxF, double[] MinF)> ReadYears()
    {
        var years = new Dictionary<int, (double[] MaxF, double[] MinF)>();
        foreach (var reading in ReferenceStations.OfCooperative("USC00118740"))
        {
            var date = reading.Date;
            if (!years.TryGetValue(date.Year, out var year))
                years[date.Year] = year = (Missing(), Missing());
            // Read in whole °F, kept in tenths of °C.
            (reading.Element == DailyElement.MaxTemperatureC ? year.MaxF : year.MinF)[date.DayOfYear - 1] =
                Math.Round(reading.Value * 1.8 + 32);
        }
        return years;
    }

    private static double[] Missing() => [.. Enumerable.Repeat(double.NaN, 366)];
}
