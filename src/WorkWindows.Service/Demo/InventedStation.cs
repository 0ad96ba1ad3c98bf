using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Service.Demo;

/// <summary>
/// A weather station that does not exist. Its weather is computed from the date alone, so that it is the same whenever
/// and in however many steps it is loaded.
/// </summary>
/// <param name="GhcnId">Begins with letters that no country has.</param>
/// <param name="Name">Says that it is invented.</param>
/// <param name="Latitude">Degrees north.</param>
/// <param name="Longitude">Degrees east.</param>
/// <param name="ElevationM">Metres above sea level.</param>
/// <param name="TimeZone">The IANA zone of its days.</param>
/// <param name="YearlyMeanC">Mean temperature of the year, °C.</param>
/// <param name="SummerAboveMeanC">How far the warmest day of the cycle lies above it, °C.</param>
/// <param name="Seed">Makes its weather its own; stations near each other have the same.</param>
/// <param name="Hollow">Sets its temperatures apart from those of stations with the same seed; 0 for none.</param>
internal sealed record InventedStation(
    string GhcnId, string Name, double Latitude, double Longitude, double ElevationM, string TimeZone,
    double YearlyMeanC, double SummerAboveMeanC, int Seed, int Hollow = 0)
{
    public const string IdStart = "ZZDEMO";

    private const int WarmestDayOfYear = 201;
    private const double HalfDailyRangeC = 5.5;

    /// <summary>
    /// Weather changes with fronts that pass every so many days, a blustery day and a breezy one after it.
    /// </summary>
    private const int DaysBetweenFronts = 5;

    /// <summary>
    /// Yesterday's share in today's deviation from the season, and how many days back it is followed.
    /// </summary>
    private const double Persistence = 0.7;

    private const int DaysRemembered = 12;
    private const double DeviationC = 3.2;

    /// <summary>How far stations near each other may lie apart on a day, °C.</summary>
    private const double ApartC = 2.5;

    private const int PurposeOfHollows = 16;

    private static readonly LocalDate Origin = new(2000, 1, 1);

    public static IReadOnlyList<InventedStation> All { get; } =
    [
        new(IdStart + "00001", "Larkspur Ridge (invented)", 42.98, -85.00, 250, "America/Detroit", 8.6, 14.2, 1),
        new(IdStart + "00002", "Coulee Divide (invented)", 43.65, -90.70, 335, "America/Chicago", 7.4, 16.0, 2),
        new(IdStart + "00003", "Millrace Flats (invented)", 42.80, -85.20, 238, "America/Detroit", 8.9, 14.4, 1, 1),
    ];

    /// <summary>The readings of the days from one to another, both included.</summary>
    public IEnumerable<DailyReading> Readings(LocalDate first, LocalDate last)
    {
        var snowCm = 0.0;
        for (var date = StartOfSnowYear(first); date <= last; date = date.PlusDays(1))
        {
            var (min, max) = Temperatures(date);
            var rainMm = RainMm(date);
            snowCm = date == StartOfSnowYear(date) ? 0 : SnowAfter(snowCm, rainMm, min, max);
            if (date < first)
                continue;
            var (wind, gust) = Winds(date);
            yield return new(date, DailyElement.MinTemperatureC, min, null);
            yield return new(date, DailyElement.MaxTemperatureC, max, null);
            yield return new(date, DailyElement.WindMps, wind, null);
            yield return new(date, DailyElement.GustMps, gust, null);
            yield return new(date, DailyElement.PrecipitationMm, rainMm, null);
            yield return new(date, DailyElement.SnowDepthCm, Tenths(snowCm), null);
            yield return new(date, DailyElement.MinHumidityPercent, HumidityPercent(date, rainMm), null);
        }
    }

    /// <summary>What is foretold: no depth of snow but the chance of thunder, as weather services do.</summary>
    public IEnumerable<DailyReading> Forecast(LocalDate first, LocalDate last)
    {
        foreach (var reading in Readings(first, last).Where(reading => reading.Element != DailyElement.SnowDepthCm))
            yield return reading;
        for (var date = first; date <= last; date = date.PlusDays(1))
            yield return new(date, DailyElement.ThunderChancePercent, ThunderPercent(date), null);
    }

    private (double MinC, double MaxC) Temperatures(LocalDate date)
    {
        var season = Math.Cos(Math.Tau * (date.DayOfYear - WarmestDayOfYear) / 365.25);
        var mean = YearlyMeanC + SummerAboveMeanC * season + DeviationC * Deviation(date);
        if (Hollow > 0)
            mean += ApartC * (Chance(date, PurposeOfHollows + Hollow) - 0.5);
        var halfRange = HalfDailyRangeC + 2 * (Chance(date, 1) - 0.5);
        return (AsReadInFahrenheit(mean - halfRange), AsReadInFahrenheit(mean + halfRange));
    }

    private (double WindMps, double GustMps) Winds(LocalDate date)
    {
        var spread = Chance(date, 2);
        return DaysSinceFront(date) switch
        {
            0 => (Tenths(9 + spread), Tenths(14.8 + 1.5 * spread)),
            1 => (Tenths(6.3 + 0.6 * spread), Tenths(9 + spread)),
            _ => (Tenths(2.4 + 1.8 * spread), Tenths(4.2 + 2.6 * spread)),
        };
    }

    private int DaysSinceFront(LocalDate date) => (DayNumber(date) + Seed) % DaysBetweenFronts;

    /// <summary>Most of it falls as fronts pass; about 800 mm a year.</summary>
    private double RainMm(LocalDate date)
    {
        var (dryShare, mm) = DaysSinceFront(date) switch { 0 => (0.25, 36), 1 => (0.7, 12), _ => (0.92, 20) };
        return Tenths(mm * Math.Max(0, Chance(date, 5) - dryShare));
    }

    /// <summary>A millimetre of water is a centimetre of snow in frost, settles, and melts above freezing.</summary>
    private static double SnowAfter(double snowCm, double rainMm, double minC, double maxC)
    {
        var fallenCm = minC + maxC < 0 ? rainMm : 0;
        return Math.Max(0, 0.93 * snowCm + fallenCm - 0.6 * Math.Max(0, maxC));
    }

    /// <summary>The first of September, without snow: a winter does not depend on where loading begins.</summary>
    private static LocalDate StartOfSnowYear(LocalDate date) => new(date.Month < 9 ? date.Year - 1 : date.Year, 9, 1);

    private double HumidityPercent(LocalDate date, double rainMm) =>
        Math.Round((rainMm > 0 ? 58 : 30) + 28 * Chance(date, 6));

    private double ThunderPercent(LocalDate date) =>
        date.Month is >= 4 and <= 9 && DaysSinceFront(date) == 0 ? Math.Round(20 + 45 * Chance(date, 7)) : 0;

    /// <summary>A weighted sum of the chances of the last days: like a memory of them, but with a beginning.</summary>
    private double Deviation(LocalDate date)
    {
        var (sum, weight) = (0.0, 1.0);
        for (var back = 0; back < DaysRemembered; back++, weight *= Persistence)
            sum += weight * 2 * (Chance(date.PlusDays(-back), 3) + Chance(date.PlusDays(-back), 4) - 1);
        return sum * Math.Sqrt(1 - Persistence * Persistence);
    }

    /// <summary>A number from 0 to 1 that looks random and depends on station, day and purpose only.</summary>
    private double Chance(LocalDate date, int purpose)
    {
        unchecked
        {
            // The finishing steps of SplitMix64 (Steele, Lea and Flood 2014).
            var bits =
                ((ulong)DayNumber(date) * 31 + (ulong)purpose * 7919 + (ulong)Seed * 104_729) * 0x9E3779B97F4A7C15;
            bits = (bits ^ (bits >> 30)) * 0xBF58476D1CE4E5B9;
            bits = (bits ^ (bits >> 27)) * 0x94D049BB133111EB;
            return ((bits ^ (bits >> 31)) >> 11) / (double)(1UL << 53);
        }
    }

    private static int DayNumber(LocalDate date) => Period.DaysBetween(Origin, date);

    private static double AsReadInFahrenheit(double celsius) => Tenths((Math.Round(celsius * 1.8 + 32) - 32) / 1.8);

    private static double Tenths(double value) => Math.Round(value, 1);
}
