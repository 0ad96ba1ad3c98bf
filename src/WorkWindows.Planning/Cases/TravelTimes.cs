using System.Collections.Immutable;

namespace WorkWindows.Planning.Cases;

/// <summary>A property, or the base of a crew.</summary>
/// <param name="Id">Its name in the case.</param>
/// <param name="LatitudeDeg">Degrees north.</param>
/// <param name="LongitudeDeg">Degrees east.</param>
public sealed record PlanPlace(string Id, double LatitudeDeg, double LongitudeDeg);

/// <summary>A drive whose time somebody knows.</summary>
public sealed record KnownDrive(string FromId, string ToId, double Minutes);

/// <summary>
/// Minutes from place to place. What somebody measured stands, unless other measured drives lead there in less; an estimate
/// never takes longer than the same by way of a third place.
/// </summary>
public sealed class TravelTimes
{
    /// <summary>Mean radius of the earth, km (IUGG).</summary>
    private const double EarthRadiusKm = 6371.0088;

    private const double DegreesToRadians = Math.PI / 180;
    private const double MinutesPerHour = 60;
    private readonly ImmutableDictionary<string, int> indexes;
    private readonly double[] minutes;

    private TravelTimes(ImmutableDictionary<string, int> indexes, double[] minutes) =>
        (this.indexes, this.minutes) = (indexes, minutes);

    /// <summary>Known drives where there are, else the great circle times a factor at a speed.</summary>
    /// <param name="places">Each id once.</param>
    /// <param name="known">Drives that somebody measured; each way by itself. Those of other places do not count.</param>
    /// <param name="roadFactor">How much longer roads are than the great circle; 1 or more.</param>
    /// <param name="speedKmPerHour">Speed on the road; above 0.</param>
    /// <exception cref="PlanCaseException">A number is not accepted, or a place occurs twice.</exception>
    public static TravelTimes Of(
        IReadOnlyList<PlanPlace> places, IReadOnlyList<KnownDrive> known, double roadFactor, double speedKmPerHour)
    {
        if (!(roadFactor >= 1))
            throw new PlanCaseException($"The road factor is {roadFactor}: give 1 or more.");
        if (!(speedKmPerHour > 0))
            throw new PlanCaseException($"The speed is {speedKmPerHour} km/h: give a number above 0.");
        if (places.GroupBy(place => place.Id).FirstOrDefault(same => same.Count() > 1) is { } twice)
            throw new PlanCaseException($"The place {twice.Key} occurs twice.");
        var count = places.Count;
        var minutes = new double[count * count];
        for (var from = 0; from < count; from++)
        {
            for (var to = 0; to < count; to++)
            {
                minutes[from * count + to] =
                    GreatCircleKm(places[from], places[to]) * roadFactor / speedKmPerHour * MinutesPerHour;
            }
        }
        var indexes = places.Select((place, index) => (place.Id, index)).ToImmutableDictionary(one => one.Id, one => one.index);
        var isMeasured = new bool[count * count];
        foreach (var drive in known)
        {
            if (!(drive.Minutes >= 0))
                throw new PlanCaseException($"The drive from {drive.FromId} to {drive.ToId} takes {drive.Minutes} minutes.");
            if (indexes.TryGetValue(drive.FromId, out var from) && indexes.TryGetValue(drive.ToId, out var to) && from != to)
                (minutes[from * count + to], isMeasured[from * count + to]) = (drive.Minutes, true);
        }
        Shorten(minutes, count, (way, first, second) => isMeasured[way] && isMeasured[first] && isMeasured[second]);
        Shorten(minutes, count, (way, _, _) => !isMeasured[way]);
        return new(indexes, minutes);
    }

    /// <exception cref="KeyNotFoundException">A place is not known.</exception>
    public double Minutes(string from, string to) => minutes[indexes[from] * indexes.Count + indexes[to]];

    public bool Knows(string place) => indexes.ContainsKey(place);

    /// <summary>From a base to a place and back; 0 without a base.</summary>
    public double RoundTripMinutes(string? @base, string place) =>
        @base is null ? 0 : Minutes(@base, place) + Minutes(place, @base);

    /// <summary>
    /// The haversine formula on a sphere (R. W. Sinnott, Virtues of the Haversine, Sky and Telescope 68, 1984, 159).
    /// </summary>
    internal static double GreatCircleKm(PlanPlace from, PlanPlace to)
    {
        var (latitude, other) = (from.LatitudeDeg * DegreesToRadians, to.LatitudeDeg * DegreesToRadians);
        var north = Math.Sin((other - latitude) / 2);
        var east = Math.Sin((to.LongitudeDeg - from.LongitudeDeg) * DegreesToRadians / 2);
        var haversine = north * north + Math.Cos(latitude) * Math.Cos(other) * east * east;
        return 2 * EarthRadiusKm * Math.Asin(Math.Min(1, Math.Sqrt(haversine)));
    }

    /// <summary>Whoever can drive by way of a third place in less time does (R. W. Floyd, Algorithm 97, 1962).</summary>
    /// <param name="minutes">From each place to each.</param>
    /// <param name="count">How many places.</param>
    /// <param name="may">Whether a drive may be shortened by two others; each is given by its place in the table.</param>
    private static void Shorten(double[] minutes, int count, Func<int, int, int, bool> may)
    {
        for (var by = 0; by < count; by++)
        {
            for (var from = 0; from < count; from++)
            {
                for (var to = 0; to < count; to++)
                {
                    var (way, first, second) = (from * count + to, from * count + by, by * count + to);
                    if (may(way, first, second))
                        minutes[way] = Math.Min(minutes[way], minutes[first] + minutes[second]);
                }
            }
        }
    }
}
