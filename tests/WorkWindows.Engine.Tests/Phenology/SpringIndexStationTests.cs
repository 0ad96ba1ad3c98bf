using System.Globalization;
using NodaTime.Text;
using WorkWindows.Engine.Phenology;

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

    // The toolbox's output has means of 88.0 and 116.5 (S) over the station's whole record, most of it before 1985.
    [Fact]
    public void Over_LiesNearPublishedMeans_AndBeforeThem()
    {
        Assert.Equal(30, springs.Count);
        Assert.Equal(85.7, springs.Values.Average(spring => spring.LeafDay!.Value), 0.05);
        Assert.Equal(113.9, springs.Values.Average(spring => spring.BloomDay!.Value), 0.05);
    }

    private static Dictionary<int, (double[] MaxF, double[] MinF)> ReadYears()
    {
        var dates = LocalDatePattern.CreateWithInvariantCulture("yyyyMMdd");
        var years = new Dictionary<int, (double[] MaxF, double[] MinF)>();
        foreach (var line in File.ReadLines(ProjectFiles.Reference("stations/tsv/USC00118740.txt")))
        {
            var fields = line.Split('\t');
            var date = dates.Parse(fields[0]).Value;
            if (!years.TryGetValue(date.Year, out var year))
                years[date.Year] = year = (Missing(), Missing());
            year.MaxF[date.DayOfYear - 1] = Fahrenheit(fields[1]);
            year.MinF[date.DayOfYear - 1] = Fahrenheit(fields[2]);
        }
        return years;
    }

    private static double[] Missing() => [.. Enumerable.Repeat(double.NaN, 366)];

    // Read in whole °F, kept in tenths of °C, -9999 for a day without.
    private static double Fahrenheit(string tenthsC) => int.Parse(tenthsC, CultureInfo.InvariantCulture) switch
    {
        -9999 => double.NaN,
        var tenths => Math.Round(tenths * 0.18 + 32),
    };
}
