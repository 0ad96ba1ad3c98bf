using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// Gives every parcel the nearest station with a usable record, one for temperature and one for wind, except where
/// someone chose another. Runs whenever stations, their records or parcels change, in the transaction of the change.
/// </summary>
public sealed class StationAssignment(WorkWindowsDb db, ParcelSources sources)
{
    /// <summary>
    /// Half of the days: what is missing shows as unknown, and no wind at all would show as unknown always.
    /// </summary>
    private const double MinWindCoverage = 0.5;

    /// <summary>The stations that each parcel uses as they are stored: to be asked for before a change.</summary>
    public async Task<StationsInUse> UsedAsync(CancellationToken cancellation) =>
        new(await sources.AllAsync(cancellation));

    /// <param name="before">The stations in use before the change that calls for it.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>
    /// The parcels that take their weather from other stations than before, blended ones as well, or from none. Only
    /// which they are matters: a distance may change, and the weather stays the same.
    /// </returns>
    public async Task<IReadOnlyCollection<Guid>> AssignAsync(StationsInUse before, CancellationToken cancellation)
    {
        await AssignAsync(cancellation);
        return (await UsedAsync(cancellation)).ParcelsUnlike(before);
    }

    /// <summary>The same for those who need not know which parcels it touches.</summary>
    public async Task AssignAsync(CancellationToken cancellation)
    {
        var stations = await db.Stations.ToDictionaryAsync(station => station.GhcnId, cancellation);
        var current = StationNeighbours.Current(stations.Values).ToList();
        StationCandidate[] forTemperature =
            [.. current.Select(station => new StationCandidate(station.Described(), station.TemperatureCoverage))];
        StationCandidate[] forWind =
            [.. current.Select(station => new StationCandidate(station.Described(), station.WindCoverage))];
        var links = await db.ParcelStations.ToDictionaryAsync(link => (link.ParcelId, link.Purpose), cancellation);
        foreach (var parcel in await db.Parcels.AsNoTracking().ToListAsync(cancellation))
        {
            Assign(parcel, StationPurpose.Temperature, forTemperature, StationChoice.MinCoverage);
            Assign(parcel, StationPurpose.Wind, forWind, MinWindCoverage);
        }
        await db.SaveChangesAsync(cancellation);

        void Assign(Parcel parcel, StationPurpose purpose, StationCandidate[] candidates, double minCoverage)
        {
            var link = links.GetValueOrDefault((parcel.Id, purpose));
            var match = link is { IsManual: true }
                ? Nearest(parcel, [new(link.Station.Described(), 0)], minCoverage: 0, maxDistanceM: double.MaxValue)
                : Nearest(parcel, candidates, minCoverage, StationChoice.MaxDistanceM);
            if (match is not null)
                Link(parcel.Id, purpose, link, stations[match.Station.Id], match);
            else if (link is not null)
                db.Remove(link);
        }
    }

    /// <summary>
    /// Chooses a parcel's station for a purpose by hand, or with null leaves it to the distance again.
    /// </summary>
    public async Task ChooseAsync(
        Guid parcelId, StationPurpose purpose, Station? station, CancellationToken cancellation)
    {
        var link = await db.ParcelStations.SingleOrDefaultAsync(
            row => row.ParcelId == parcelId && row.Purpose == purpose, cancellation);
        if (link is null && station is not null)
        {
            link = new() { ParcelId = parcelId, Purpose = purpose, StationId = station.Id, DistanceM = 0 };
            db.Add(link);
        }
        if (link is not null)
            (link.StationId, link.IsManual) = (station?.Id ?? link.StationId, station is not null);
        await db.SaveChangesAsync(cancellation);
    }

    private void Link(
        Guid parcelId, StationPurpose purpose, ParcelStation? link, Station station, StationMatch match)
    {
        if (link is null)
        {
            link =
                new() { ParcelId = parcelId, Purpose = purpose, StationId = station.Id, DistanceM = match.DistanceM };
            db.Add(link);
        }
        (link.StationId, link.DistanceM) = (station.Id, match.DistanceM);
        link.ElevationDifferenceM = match.ElevationDifferenceM;
    }

    private static StationMatch? Nearest(
        Parcel parcel, StationCandidate[] candidates, double minCoverage, double maxDistanceM) =>
        StationChoice.Nearest(
            candidates, parcel.Latitude, parcel.Longitude, parcel.ElevationM, minCoverage, maxDistanceM);
}
