using System.Collections.Immutable;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>How far off the nearest station used lies: from the first distance, included, to the second.</summary>
public sealed record DistanceBand(double FromM, double ToM);

/// <summary>Stations held out and told from others in a band of distance.</summary>
/// <param name="Element">Minimum or maximum temperature.</param>
/// <param name="Band">Where the nearest of the others lies; nearer ones are left out.</param>
/// <param name="Stations">How many stations were held out.</param>
/// <param name="Blend">The error of the blend over all their days.</param>
/// <param name="Nearest">The error of the nearest station's own value in its place.</param>
public sealed record CrossValidationRow(
    DailyElement Element, DistanceBand Band, int Stations, HeldOutError Blend, HeldOutError Nearest);

/// <summary>
/// Holds each station out and tells its temperatures from the others as for a parcel at its place. Compared is what it
/// read, with what the others contradict. Source: docs/rules/parcel-record.md.
/// </summary>
public static class CrossValidation
{
    /// <summary>
    /// How much further than the band the furthest station may lie, m: as far as one may from a parcel.
    /// </summary>
    public const double BeyondM = StationChoice.MaxDistanceM;

    /// <param name="records">The stations; their days are put right together first.</param>
    /// <param name="days">The days to compare; those without records are left out.</param>
    /// <param name="bands">The bands.</param>
    /// <returns>A row for each element and band in which a station could be held out, in this order.</returns>
    public static ImmutableArray<CrossValidationRow> Of(
        IEnumerable<RecordStation> records, DaySpan days, IReadOnlyCollection<DistanceBand> bands)
    {
        if (StationGroup.Of(records) is not { } group)
            return [];
        DailyElement[] elements = [DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC];
        return
        [
            .. elements.SelectMany(element => bands.Select(band => Row(group, element, band, days)))
                .OfType<CrossValidationRow>(),
        ];
    }

    private static CrossValidationRow? Row(StationGroup group, DailyElement element, DistanceBand band, DaySpan days)
    {
        var (blends, nearests) = (new List<HeldOutError>(), new List<HeldOutError>());
        for (var station = 0; station < group.Stations.Length; station++)
        {
            var others = Others(group, station, band);
            if (others is []
                || PlaceBlend.OfStation(group, element, station, others, days) is not { } blend
                || PlaceBlend.OfStation(group, element, station, others[..1], days) is not { } nearest)
            {
                continue;
            }
            blends.Add(blend);
            nearests.Add(nearest);
        }
        return HeldOutError.Of(blends) is { } ofBlend && HeldOutError.Of(nearests) is { } ofNearest
            ? new(element, band, blends.Count, ofBlend, ofNearest)
            : null;
    }

    /// <summary>The stations that may tell one, by distance; none when the nearest lies beyond the band.</summary>
    private static int[] Others(StationGroup group, int station, DistanceBand band)
    {
        var place = RecordPlace.Of(group.Stations[station]);
        int[] others =
        [
            .. group.InOrder(place, null)
                .Where(other => other != station && place.DistanceM(group.Stations[other]) is var distance
                    && distance >= band.FromM && distance < band.ToM + BeyondM)
                .Take(ParcelRecord.MaxStations),
        ];
        return others is [var nearest, ..] && place.DistanceM(group.Stations[nearest]) < band.ToM ? others : [];
    }
}
