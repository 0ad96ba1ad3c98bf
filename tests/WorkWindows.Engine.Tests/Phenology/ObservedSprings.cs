using System.Globalization;
using System.IO.Compression;
using NodaTime;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>Observed days of a phase and the daily mean temperatures of their sites and years.</summary>
/// <param name="Observations">One an observed plant: site, year and day of the year.</param>
/// <param name="MeansC">By site and year: °C from <see cref="FirstDayOfYear"/> on, a day each, NaN where none.</param>
/// <param name="PositionsDeg">By site: WGS 84, north and east positive.</param>
internal sealed record ObservedSprings(
    IReadOnlyList<(string Site, int Year, int DayOfYear)> Observations,
    IReadOnlyDictionary<(string Site, int Year), double[]> MeansC,
    IReadOnlyDictionary<string, (double Latitude, double Longitude)> PositionsDeg)
{
    /// <summary>Temperatures start on this day of the year; day 0 is 31 December.</summary>
    public const int FirstDayOfYear = -65;

    private const int LastDayOfYear = 366;

    public static ObservedSprings Read(string observations, string temperatures, int phase)
    {
        var observed = Rows(observations)
            .Where(row => row["phenophase"] == $"{phase}")
            .Select(row => (row["site_id"], Integer(row["year"]), Integer(row["doy"])));
        var means = new Dictionary<(string, int), double[]>();
        var positions = new Dictionary<string, (double, double)>();
        foreach (var row in Rows(temperatures))
        {
            var key = (row["site_id"], Integer(row["year"]));
            if (!means.TryGetValue(key, out var days))
            {
                days = means[key] = new double[LastDayOfYear - FirstDayOfYear + 1];
                Array.Fill(days, double.NaN);
                positions[row["site_id"]] = (Number(row["latitude"]), Number(row["longitude"]));
            }
            days[Integer(row["doy"]) - FirstDayOfYear] = Number(row["temperature"]);
        }
        return new([.. observed], means, positions);
    }

    /// <summary>Predicted minus observed day of every observation.</summary>
    public IReadOnlyList<double> ErrorsDays(Func<(string Site, int Year), double> predictedDayOfYear) =>
        [.. Observations.Select(seen => predictedDayOfYear((seen.Site, seen.Year)) - seen.DayOfYear)];

    /// <summary>The means of one site and year from a day of that year on.</summary>
    public ReadOnlySpan<double> From((string Site, int Year) key, int dayOfYear) =>
        MeansC[key].AsSpan(dayOfYear - FirstDayOfYear);

    public static int DayOfYear(AnnualDate date, int year) => date.InYear(year).DayOfYear;

    private static IEnumerable<Dictionary<string, string>> Rows(string file)
    {
        using var stream = File.OpenRead(ProjectFiles.Reference(Path.Combine("phenology", file)));
        using var text = new StreamReader(
            file.EndsWith(".gz", StringComparison.Ordinal)
                ? new GZipStream(stream, CompressionMode.Decompress)
                : stream);
        var names = text.ReadLine()!.Split(',');
        while (text.ReadLine() is { } line)
            yield return names.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static int Integer(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
