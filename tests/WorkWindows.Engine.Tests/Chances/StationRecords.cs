using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;
using WorkWindows.Tests;

namespace WorkWindows.Engine.Tests.Chances;

/// <summary>
/// Thirty years (1985-2014) of cooperative stations: NOAA GHCN-Daily (Menne et al. 2012, doi:10.7289/V5D21VHZ), public
/// domain.
/// </summary>
internal static class StationRecords
{
    private const double Tenths = 10, NoValue = -9000;

    /// <summary>Minimum, maximum and precipitation of Urbana IL.</summary>
    public static DailySeries Urbana { get; } = Read("USC00118740");

    public static DailySeries Read(string id) => DailySeries.Of(Readings(id), readsUsUnits: true);

    public static IEnumerable<DailyReading> Readings(string id)
    {
        var pattern = LocalDatePattern.CreateWithInvariantCulture("yyyyMMdd");
        foreach (var line in File.ReadLines(ProjectFiles.Reference($"stations/tsv/{id}.txt")))
        {
            var fields = line.Split('\t', StringSplitOptions.TrimEntries);
            var date = pattern.Parse(fields[0]).GetValueOrThrow();
            foreach (var (element, column) in new[]
            {
                (DailyElement.MaxTemperatureC, 1), (DailyElement.MinTemperatureC, 2), (DailyElement.PrecipitationMm, 3),
            })
            {
                if (double.TryParse(fields[column], CultureInfo.InvariantCulture, out var value) && value > NoValue)
                    yield return new(date, element, value / Tenths, null);
            }
        }
    }
}
