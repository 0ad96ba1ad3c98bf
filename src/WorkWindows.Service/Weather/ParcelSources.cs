using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Finds where parcels' weather comes from.</summary>
public sealed class ParcelSources(WorkWindowsDb db)
{
    /// <returns>The source of each parcel.</returns>
    public async Task<IReadOnlyDictionary<Guid, WeatherSource>> OfAsync(
        IReadOnlyCollection<PlacedParcel> parcels, CancellationToken cancellation)
    {
        var ids = parcels.Select(parcel => parcel.Id).ToList();
        // All stations of the organization are neighbours that may be blended in.
        var rows = await db.Stations.AsNoTracking().Select(station => new
        {
            Station = station,
            Links = db.ParcelStations.Where(link => link.StationId == station.Id && ids.Contains(link.ParcelId))
                .Select(link => new { link.ParcelId, link.Purpose, link.IsManual }).ToList(),
        }).ToListAsync(cancellation);
        var links = rows.SelectMany(row => row.Links, (row, link) => (
            link.ParcelId, Link: new StationLink(row.Station, link.Purpose, link.IsManual))).ToLookup(one => one.ParcelId, one => one.Link);
        var neighbours = new StationNeighbours(rows.Select(row => row.Station));
        return parcels.ToDictionary(
            parcel => parcel.Id, parcel => WeatherSource.Of(parcel.Id, parcel.Place, [.. links[parcel.Id]], neighbours));
    }

    /// <returns>The source of each parcel that exists.</returns>
    public async Task<IReadOnlyDictionary<Guid, WeatherSource>> OfAsync(
        IReadOnlyCollection<Guid> parcels, CancellationToken cancellation) =>
        await OfAsync(
            await db.Parcels.AsNoTracking().Where(parcel => parcels.Contains(parcel.Id))
                .Select(parcel => new PlacedParcel(parcel.Id, new(parcel.Latitude, parcel.Longitude, parcel.ElevationM)))
                .ToListAsync(cancellation),
            cancellation);

    /// <summary>
    /// The parcels whose weather a change touches, and no others: forecasts and alerts come from a parcel's own
    /// station, its record from those it is blended from as well.
    /// </summary>
    public async Task<IReadOnlyCollection<Guid>> TouchedByAsync(WeatherChange change, CancellationToken cancellation)
    {
        var records = change.Records.ToHashSet();
        var outlooks = change.Outlooks.ToHashSet();
        var all = await AllAsync(cancellation);
        return
        [
            .. all.Where(parcel => change.Parcels.Contains(parcel.Key) || IsTouched(parcel.Value))
                .Select(parcel => parcel.Key),
        ];

        bool IsTouched(WeatherSource source) =>
            source.Temperature.Any(station => records.Contains(station.Id))
            || (source.Wind is { } wind && records.Contains(wind.Id))
            || (source.Primary is { } primary && outlooks.Contains(primary.Id));
    }

    /// <summary>The stations that any parcel takes temperatures or winds from, in the order of their ids.</summary>
    public async Task<IReadOnlyList<Station>> InUseAsync(CancellationToken cancellation) =>
    [
        .. (await AllAsync(cancellation)).Values
            .SelectMany(source => source.Wind is { } wind ? source.Temperature.Append(wind) : source.Temperature)
            .DistinctBy(station => station.Id).OrderBy(station => station.GhcnId, StringComparer.Ordinal),
    ];

    /// <returns>The source of every parcel of the organization.</returns>
    public async Task<IReadOnlyDictionary<Guid, WeatherSource>> AllAsync(CancellationToken cancellation) =>
        await OfAsync(await db.Parcels.Select(parcel => parcel.Id).ToListAsync(cancellation), cancellation);
}

/// <summary>A parcel and where it lies.</summary>
public sealed record PlacedParcel(Guid Id, RecordPlace Place);
