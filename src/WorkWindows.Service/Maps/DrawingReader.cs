using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Maps;

/// <summary>Gathers what lies around a boundary that is to be drawn.</summary>
public sealed class DrawingReader(WorkWindowsDb db, ReaderUnits units, IOptions<MapOptions> options)
{
    /// <param name="entry">What was typed and shown so far.</param>
    /// <param name="propertyId">The property.</param>
    /// <param name="parcelId">The parcel that is drawn; null for a new one.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task<DrawingView> ReadAsync(DrawingEntry entry, Guid propertyId, Guid? parcelId, CancellationToken cancellation)
    {
        var all = await db.Parcels.AsNoTracking().OrderBy(parcel => parcel.Name).Select(parcel => new MappedParcel(
                parcel.Id, parcel.Name, parcel.PropertyId, parcel.Property.Name, parcel.Latitude, parcel.Longitude,
                parcel.PropertyId == propertyId ? parcel.BoundaryGeoJson : null))
            .ToListAsync(cancellation);
        var here = all.FindAll(parcel => parcel.PropertyId == propertyId);
        // A new property is drawn where the others lie, until the map is moved.
        var near = parcelId is { } id ? here.FindAll(parcel => parcel.Id == id) : here.Count > 0 ? here : all;
        var frame = entry.Moved(MapFrame.Around([.. near.SelectMany(ParcelShape.Corners)]));
        return new(entry.Corners ?? "", new(frame, options.Value, (await units.ReadAsync()).Areas), here.FindAll(parcel => parcel.Id != parcelId));
    }
}
