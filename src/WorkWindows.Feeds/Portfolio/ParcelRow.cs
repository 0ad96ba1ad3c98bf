using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using WorkWindows.Engine.Land;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>One feature of a parcel file.</summary>
/// <param name="Line">Where it begins in the file.</param>
/// <param name="Property">The key of its property.</param>
/// <param name="PropertyName">Null where this feature does not give it; another of the same property may.</param>
/// <param name="Parcel">Its own key, unique within the file.</param>
/// <param name="ParcelName">Its name, if given.</param>
/// <param name="Landowner">As for the property's name.</param>
/// <param name="LandownerEmail">As for the property's name.</param>
/// <param name="CountyFips">Five digits, the first two those of the state.</param>
/// <param name="State">Two-letter postal code.</param>
/// <param name="TimeZone">IANA name, as given or else from county and position.</param>
/// <param name="IsTimeZoneGiven">Whether the file gives it.</param>
/// <param name="Flags">What has been noted of the parcel; null where the file does not say.</param>
/// <param name="Stand">Empty if no inventory has been taken.</param>
/// <param name="Site">Where it lies.</param>
/// <param name="ElevationM">Metres above sea level, if given.</param>
public sealed record ParcelRow(
    int Line,
    string Property,
    string? PropertyName,
    string Parcel,
    string? ParcelName,
    string? Landowner,
    string? LandownerEmail,
    string CountyFips,
    string State,
    string TimeZone,
    bool IsTimeZoneGiven,
    ImmutableSortedSet<SiteFlag>? Flags,
    ImmutableArray<StandRow> Stand,
    ParcelSite Site,
    double? ElevationM);

/// <summary>Trees of one species and diameter class.</summary>
/// <param name="Species">The species.</param>
/// <param name="DbhMinIn">Smallest diameter at breast height of the class, inches.</param>
/// <param name="DbhMaxIn">Largest, inches.</param>
/// <param name="StemsPerAcre">Stems per acre.</param>
public sealed record StandRow(Species Species, double DbhMinIn, double DbhMaxIn, double StemsPerAcre);

/// <summary>Where a parcel lies, WGS 84.</summary>
/// <param name="Boundary">Null for a parcel that is known by a point only.</param>
/// <param name="LatitudeDeg">Of the point, or of a point inside the boundary.</param>
/// <param name="LongitudeDeg">Likewise.</param>
/// <param name="AreaM2">On the ellipsoid; null without a boundary.</param>
public sealed record ParcelSite(MultiPolygon? Boundary, double LatitudeDeg, double LongitudeDeg, double? AreaM2)
{
    /// <summary>The boundary as a GeoJSON geometry; null without one.</summary>
    public string? BoundaryGeoJson => Boundary is null ? null : ParcelSiteReader.Write(Boundary);
}
