using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Crowns;
using WorkWindows.Engine.Stands.Suitability;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Stands;

/// <summary>A parcel's inventory and what is noted of it.</summary>
/// <param name="ParcelId">The parcel.</param>
/// <param name="Parcel">Its name.</param>
/// <param name="PropertyId">Its property.</param>
/// <param name="Property">The name of it.</param>
/// <param name="Rows">The inventory as it was handed in; none where it was never taken.</param>
/// <param name="Stand">The same as stems of the middle of each class.</param>
/// <param name="Flags">What is noted of the parcel.</param>
/// <param name="Limits">What the organization keeps hinge cuts within.</param>
/// <param name="ElevationIsAssumed">Whether nobody knows how high it lies.</param>
public sealed record StandInput(
    Guid ParcelId, string Parcel, Guid PropertyId, string Property, IReadOnlyList<StandRow> Rows, Stand Stand,
    IReadOnlyList<SiteFlag> Flags, HingeLimits Limits, bool ElevationIsAssumed);

/// <summary>Reads the stand of a parcel.</summary>
public sealed class StandReader(VisibleProperties properties, ParcelSources sources, WorkWindowsDb db)
{
    private const double FeetPerMeter = 1 / 0.3048;

    /// <summary>The elevation at which Hopkins' index has no part for it, feet.</summary>
    internal const double ReferenceElevationFt = 887;

    /// <returns>Null when the caller sees no such parcel.</returns>
    public async Task<StandInput?> ReadAsync(Guid id, CancellationToken cancellation)
    {
        var found = await properties.All.AsNoTracking().SelectMany(property => property.Parcels, (property, parcel) => new
        {
            Parcel = parcel,
            Property = property.Name,
        }).SingleOrDefaultAsync(row => row.Parcel.Id == id, cancellation);
        if (found is null)
            return null;
        var limits = await LimitsAsync(cancellation);
        var source = (await sources.OfAsync([id], cancellation))[id];
        return Of(found.Parcel, found.Property, source.Place.ElevationM, limits);
    }

    /// <summary>The stands of a property's parcels, those without an inventory left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, StandInput>> ReadAsync(Property property, CancellationToken cancellation)
    {
        var taken = property.Parcels.Where(parcel => parcel.Stand?.Count > 0).ToList();
        if (taken.Count == 0)
            return new Dictionary<Guid, StandInput>();
        var limits = await LimitsAsync(cancellation);
        var places = await sources.OfAsync([.. taken.Select(parcel => parcel.Id)], cancellation);
        return taken.ToDictionary(
            parcel => parcel.Id, parcel => Of(parcel, property.Name, places[parcel.Id].Place.ElevationM, limits));
    }

    private static StandInput Of(Parcel parcel, string property, double? elevationM, HingeLimits limits)
    {
        var hopkins = CrownSite.Hopkins(elevationM * FeetPerMeter ?? ReferenceElevationFt, parcel.Latitude, parcel.Longitude);
        var rows = parcel.Stand ?? [];
        return new(
            parcel.Id, parcel.Name, parcel.PropertyId, property, rows, new([.. rows.Select(Stems)], CrownSite.Assumed(hopkins)),
            [.. parcel.SiteFlags], limits, elevationM is null);
    }

    private async Task<HingeLimits> LimitsAsync(CancellationToken cancellation) =>
        (await db.PlanningSettings.AsNoTracking().SingleOrDefaultAsync(cancellation))?.HingeLimits ?? new();

    private static StemClass Stems(StandRow row) => new(
        SpeciesCatalogue.Find(row.Species)
            ?? throw new InvalidOperationException($"The species catalogue has no {row.Species}."),
        (row.DbhMinIn + row.DbhMaxIn) / 2, row.StemsPerAcre)
    {
        RangeIn = new(row.DbhMinIn, row.DbhMaxIn),
    };
}
