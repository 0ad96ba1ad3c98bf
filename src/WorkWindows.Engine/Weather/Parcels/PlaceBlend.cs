using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>Which stations stand for a place, and with which shares. Source: docs/rules/parcel-record.md.</summary>
internal sealed class PlaceBlend
{
    /// <summary>
    /// Weights fall with this power of the distance: common practice, and none did better on 16 stations.
    /// </summary>
    private const int Power = 2;

    /// <summary>Nearer than this all stations are equally near: positions are not known better, m.</summary>
    private const double NearestM = 1000;

    private readonly StationGroup group;
    private readonly double[] closeness;
    private readonly double? elevationM;

    public PlaceBlend(StationGroup group, int[] members, RecordPlace place)
    {
        (this.group, Members) = (group, members);
        closeness = [.. members.Select(member =>
            1 / Math.Pow(Math.Max(NearestM, place.DistanceM(group.Stations[member])), Power))];
        var total = closeness.Sum();
        double[] kept = [.. closeness.Select(weight => weight >= ParcelRecord.LeastShare * total ? weight : 0)];
        Shares = [.. kept.Select(weight => weight / kept.Sum())];
        // One station alone is taken as it was read.
        elevationM = kept.Count(weight => weight > 0) > 1 ? place.ElevationM : null;
    }

    /// <summary>Indices of the stations in their group.</summary>
    public int[] Members { get; }

    /// <summary>The share of each, which sum to 1; one with none only fills gaps.</summary>
    public double[] Shares { get; }

    /// <summary>The one that is the whole mean; null where several are.</summary>
    public int? Whole => Array.IndexOf(Shares, 1) is var whole and >= 0 ? whole : null;

    public Blend Of(DailyElement element) => new(element, group, Members, Shares, closeness, elevationM);

    /// <summary>
    /// How well the station that is the whole mean, else the first, is told by the others, moved by their usual
    /// difference; null if not at all.
    /// </summary>
    public HeldOutError? ErrorOfFilling(DailyElement element, DaySpan days)
    {
        var shares = new double[Members.Length];
        var told = Whole ?? 0;
        shares[told] = 1;
        var filled = new Blend(element, group, Members, shares, closeness, null);
        return HeldOutError.Of(
            days, group.Days, day => filled.At(day, out _, without: told), group.AsFound(element, Members[told]));
    }

    /// <summary>
    /// How well the place of each station that has a share is told by the other stations, as if it had none; null if
    /// not at all.
    /// </summary>
    public HeldOutError? ErrorOfBlending(DailyElement element, DaySpan days) => HeldOutError.Of(
        Members.Where((_, i) => Shares[i] > 0).Select(member => HeldOut(element, member, days)).OfType<HeldOutError>());

    private HeldOutError? HeldOut(DailyElement element, int station, DaySpan days)
    {
        int[] others = [.. Members.Where(member => member != station)];
        return others is [] ? null : OfStation(group, element, station, others, days);
    }

    /// <summary>How well other stations tell the place of one; null when no day can be compared.</summary>
    public static HeldOutError? OfStation(
        StationGroup group, DailyElement element, int station, int[] others, DaySpan days)
    {
        var blend = new PlaceBlend(group, others, RecordPlace.Of(group.Stations[station])).Of(element);
        return HeldOutError.Of(days, group.Days, day => blend.At(day, out _), group.AsFound(element, station));
    }
}
