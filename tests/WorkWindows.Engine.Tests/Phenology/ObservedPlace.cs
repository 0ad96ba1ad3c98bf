using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// A place whose springs were seen: sites within a kilometre of each other, as one property would be.
/// </summary>
/// <param name="Name">The first site of the place.</param>
/// <param name="LongitudeDeg">WGS 84, east positive.</param>
/// <param name="Springs">By year, the median over the plants of all its sites.</param>
/// <param name="Record">The daily means of its years, as minimum and maximum.</param>
internal sealed record ObservedPlace(
    string Name, double LongitudeDeg, IReadOnlyDictionary<int, LocalDate> Springs, DailySeries Record)
{
    private const double LongestM = 1000;

    /// <summary>The shipped rules are of the woods east of here, and so are the species models.</summary>
    public bool IsEastern => LongitudeDeg > -100;

    public static IReadOnlyList<ObservedPlace> Of(ObservedSprings springs)
    {
        var places = new List<List<string>>();
        foreach (var site in springs.MeansC.Keys.Select(key => key.Site).Distinct().OrderBy(int.Parse))
        {
            if (places.Find(place => DistanceM(springs, place[0], site) <= LongestM) is { } near)
                near.Add(site);
            else
                places.Add([site]);
        }
        return [.. places.Select(sites => Of(springs, sites))];
    }

    private static ObservedPlace Of(ObservedSprings springs, List<string> sites)
    {
        var seen = springs.Observations.Where(seen => sites.Contains(seen.Site)).GroupBy(seen => seen.Year)
            .ToDictionary(
                group => group.Key,
                group => new LocalDate(group.Key, 1, 1).PlusDays(Median([.. group.Select(one => one.DayOfYear)]) - 1));
        var years = springs.MeansC.Where(year => sites.Contains(year.Key.Site))
            .GroupBy(year => year.Key.Year).Select(group => (Year: group.Key, MeansC: group.First().Value));
        return new(
            sites[0], springs.PositionsDeg[sites[0]].Longitude, seen, DailySeries.Of(years.SelectMany(Readings)));
    }

    private static IEnumerable<DailyReading> Readings((int Year, double[] MeansC) year)
    {
        for (var day = 1; day <= CalendarSystem.Iso.GetDaysInYear(year.Year); day++)
        {
            var mean = year.MeansC[day - ObservedSprings.FirstDayOfYear];
            if (double.IsNaN(mean))
                continue;
            var date = new LocalDate(year.Year, 1, 1).PlusDays(day - 1);
            yield return new(date, DailyElement.MinTemperatureC, mean, null);
            yield return new(date, DailyElement.MaxTemperatureC, mean, null);
        }
    }

    private static double DistanceM(ObservedSprings springs, string one, string other)
    {
        var ((latitude1, longitude1), (latitude2, longitude2)) =
            (springs.PositionsDeg[one], springs.PositionsDeg[other]);
        return StationChoice.DistanceM(latitude1, longitude1, latitude2, longitude2);
    }

    private static int Median(int[] days)
    {
        Array.Sort(days);
        return (int)Math.Round((days[(days.Length - 1) / 2] + days[days.Length / 2]) / 2.0);
    }
}
