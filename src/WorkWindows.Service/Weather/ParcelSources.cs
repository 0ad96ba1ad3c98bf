using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Finds where parcels' weather comes from.</summary>
public sealed class ParcelSources(WorkWindowsDb db)
{
    /// <returns>The source of each parcel that exists.</returns>
    public async Task<IReadOnlyDictionary<Guid, WeatherSource>> OfAsync(
        IReadOnlyCollection<Guid> parcels, CancellationToken cancellation)
    {
        var places = await db.Parcels.AsNoTracking().Where(parcel => parcels.Contains(parcel.Id))
            .Select(parcel => new { parcel.Id, parcel.Latitude, parcel.Longitude, parcel.ElevationM })
            .ToListAsync(cancellation);
        var links = (await db.ParcelStations.AsNoTracking().Include(link => link.Station)
            .Where(link => parcels.Contains(link.ParcelId)).ToListAsync(cancellation)).ToLookup(link => link.ParcelId);
        var neighbours = await StationNeighbours.ReadAsync(db, cancellation);
        return places.ToDictionary(parcel => parcel.Id, parcel => WeatherSource.Of(
            parcel.Id, new RecordPlace(parcel.Latitude, parcel.Longitude, parcel.ElevationM), [.. links[parcel.Id]],
            neighbours));
    }
}
