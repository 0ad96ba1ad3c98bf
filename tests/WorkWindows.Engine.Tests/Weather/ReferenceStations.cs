using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Tests;

namespace WorkWindows.Engine.Tests.Weather;

/// <summary>
/// Daily minima and maxima of the reference stations, as their files have them: NOAA GHCN-Daily (Menne et al. 2012,
/// doi:10.7289/V5D21VHZ), public domain.
/// </summary>
internal static class ReferenceStations
{
    private static readonly LocalDatePattern Compact = LocalDatePattern.CreateWithInvariantCulture("uuuuMMdd");
    private static readonly LocalDatePattern Slashed = LocalDatePattern.CreateWithInvariantCulture("M/d/uuuu");

    /// <summary>Ids of the twelve cooperative stations of IL, IN, IA and OH.</summary>
    public static IReadOnlyList<string> Cooperative { get; } =
    [
        "USC00111280", "USC00115901", "USC00115943", "USC00118740", "USC00123418", "USC00125237", "USC00129557",
        "USC00131402", "USC00138688", "USC00336196", "USC00338822", "USC00339312",
    ];

    public static WeatherStation OHare { get; } = new("USW00094846", "Chicago O'Hare", 41.995, -87.9336, 201.8);

    public static WeatherStation BotanicGarden { get; } =
        new("USC00111497", "Chicago Botanic Garden", 42.1397, -87.7853, 192);

    public static WeatherStation Milwaukee { get; } = new("USW00014839", "Milwaukee", 42.955, -87.9044, 204.2);

    public static WeatherStation AnnArbor { get; } = new("USC00200230", "Ann Arbor", 42.2947, -83.7108, 274.3);

    /// <summary>A cooperative station as the list of coordinates describes it.</summary>
    public static WeatherStation Described(string id)
    {
        var line = File.ReadLines(ProjectFiles.Reference("stations/station-coordinates.txt"))
            .Single(line => line[..6] == id[5..]);
        return new(id, line[36..66].Trim(), Number(line[6..15]), Number(line[15..25]), Number(line[25..32]));
    }

    public static List<DailyReading> OfCooperative(string id) =>
        Readings($"tsv/{id}.txt", '\t', header: false, "0", Compact, "2", "1", text => Number(text) / 10);

    /// <summary>Rain as well, mm.</summary>
    public static List<DailyReading> WithRain(string cooperativeId) => Readings(
        $"tsv/{cooperativeId}.txt", '\t', header: false, "0", Compact, "2", "1", text => Number(text) / 10, rain: "3");

    /// <summary>Minimum, maximum and rain of Urbana IL, 1985 to 2014, unchecked.</summary>
    public static DailySeries Urbana { get; } = DailySeries.Of(WithRain("USC00118740"), readsUsUnits: true);

    public static List<DailyReading> Of(WeatherStation station) => station.Id switch
    {
        "USW00094846" => Readings(
            "noaa-csv/USW00094846_ohare_access_degF.csv", ',', header: true, "DATE", LocalDatePattern.Iso, "TMIN", "TMAX",
            Celsius),
        "USC00111497" => Readings(
            "noaa-csv/USC00111497_chicago_botanic_access_degF.csv", ',', header: true, "DATE", LocalDatePattern.Iso,
            "TMIN", "TMAX", Celsius),
        "USW00014839" => Readings(
            "noaa-csv/USW00014839_milwaukee_wide_degF.csv", ',', header: true, "date", LocalDatePattern.Iso, "TMIN",
            "TMAX", Celsius),
        "USC00200230" => Readings(
            "noaa-csv/USC00200230_ann_arbor_cdo_degF.csv", ',', header: true, "DATE", LocalDatePattern.Iso, "TMIN",
            "TMAX", Celsius, nameHasComma: true),
        var id => OfCooperative(id),
    };

    /// <summary>Millbrook NY; each row on the day it is stamped with, though many are stamped an hour early.</summary>
    public static List<DailyReading> CaryAsStamped() => Readings(
        "cary/cary_met_data_daily.csv", ',', header: true, "DATE", Slashed, "MIN_TEMP", "MAX_TEMP", Number);

    /// <summary>All sixteen stations of the middle west with the checked records that they have.</summary>
    public static IReadOnlyList<RecordStation> All { get; } =
    [
        .. new[] { OHare, BotanicGarden, Milwaukee, AnnArbor }.Concat(Cooperative.Select(Described))
            .Select(station => new RecordStation(station, QualityControl.Check(Of(station), readsUsUnits: true))),
    ];

    public static RecordStation Record(string id) => All.Single(record => record.Station.Id == id);

    private static List<DailyReading> Readings(
        string file, char separator, bool header, string date, LocalDatePattern pattern, string min, string max,
        Func<string, double> value, bool nameHasComma = false, string? rain = null)
    {
        var rows = File.ReadLines(ProjectFiles.Reference($"stations/{file}"))
            .Select(line => (nameHasComma ? line.Replace(", ", " ", StringComparison.Ordinal) : line).Split(separator)
                .Select(field => field.Trim('"', ' ')).ToArray())
            .ToList();
        var (dateAt, minAt, maxAt) = (Column(date), Column(min), Column(max));
        var readings = new List<DailyReading>();
        foreach (var row in header ? rows[1..] : rows)
        {
            var day = pattern.Parse(row[dateAt].Split(' ')[0]).Value;
            Add(day, DailyElement.MinTemperatureC, row[minAt]);
            Add(day, DailyElement.MaxTemperatureC, row[maxAt]);
            if (rain is not null)
                Add(day, DailyElement.PrecipitationMm, row[Column(rain)]);
        }
        return readings;

        int Column(string name) =>
            header ? Array.IndexOf(rows[0], name) : int.Parse(name, CultureInfo.InvariantCulture);

        void Add(LocalDate day, DailyElement element, string text)
        {
            if (text is not ("" or "NA" or "-9999"))
                readings.Add(new(day, element, value(text), null));
        }
    }

    private static double Celsius(string degF) => (Number(degF) - 32) / 1.8;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
