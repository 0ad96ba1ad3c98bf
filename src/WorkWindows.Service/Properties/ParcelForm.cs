using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Properties;

/// <summary>A parcel as someone wants it to be.</summary>
/// <param name="Key">The organization's own name for it; it stays what it is once the parcel exists.</param>
/// <param name="Name">Its name for people; its key without one.</param>
/// <param name="Geometry">A GeoJSON Polygon, MultiPolygon or Point in WGS 84.</param>
/// <param name="ElevationM">Metres above sea level, or null where it is not known.</param>
/// <param name="Stand">The inventory; null leaves it as it is.</param>
/// <param name="Flags">The site flags; null leaves them as they are.</param>
public sealed record ParcelForm(
    string? Key, string? Name, JsonElement? Geometry, double? ElevationM, IReadOnlyList<StandRowForm>? Stand,
    IReadOnlyList<string>? Flags)
{
    /// <summary>From below the Salton Sea to above Denali.</summary>
    private const double LowestM = -100, HighestM = 6_200;

    internal ParcelFields Check(FieldFaults faults, string prefix = "", string? key = null)
    {
        var checkedKey = key ?? faults.Required($"{prefix}key", Key, FieldText.IsKey, FieldText.Key);
        if (key is not null && Key is not null && Key != key)
            faults.Add($"{prefix}key", Key, $"'{key}', which stays what it is, or nothing");
        var name = faults.Optional($"{prefix}name", Name, FieldText.IsName, FieldText.Name);
        if (ElevationM is not (null or (>= LowestM and <= HighestM)))
            faults.Add($"{prefix}elevationM", ElevationM, $"metres above sea level from {LowestM} to {HighestM}");
        var parts = ParcelParts.Read(JsonSerializer.SerializeToElement(
            new { geometry = Geometry, stand = Stand, flags = Flags }, JsonSerializerOptions.Web));
        faults.Add(parts.Faults, prefix);
        if (Geometry is null)
            faults.Add($"{prefix}geometry", null, "a GeoJSON Polygon, MultiPolygon or Point in WGS 84");
        return new(checkedKey, name ?? checkedKey, parts.Site, parts.PositionZone, ElevationM,
            Stand is null ? null : [.. parts.Stand.Select(StandRow.Of)], parts.Flags);
    }
}

/// <summary>One species and diameter class of an inventory, as someone wants it to be.</summary>
/// <param name="Species">A common name of the species catalogue.</param>
/// <param name="DbhMinIn">Smallest diameter at breast height of the class, inches.</param>
/// <param name="DbhMaxIn">Largest, inches.</param>
/// <param name="StemsPerAcre">Stems an acre.</param>
public sealed record StandRowForm(string? Species, double? DbhMinIn, double? DbhMaxIn, double? StemsPerAcre);

/// <summary>The fields of a form that was found right.</summary>
internal sealed record ParcelFields(
    string Key, string Name, ParcelSite? Site, string? PositionZone, double? ElevationM,
    ImmutableArray<StandRow>? Stand, ImmutableSortedSet<SiteFlag>? Flags)
{
    public Parcel ToParcel(Guid propertyId)
    {
        var parcel = new Parcel
        {
            PropertyId = propertyId,
            Key = Key,
            Name = Name,
            Latitude = Site!.LatitudeDeg,
            Longitude = Site.LongitudeDeg,
        };
        Apply(parcel);
        return parcel;
    }

    public void Apply(Parcel parcel)
    {
        parcel.Name = Name;
        parcel.ElevationM = ElevationM;
        parcel.Place(Site!);
        if (Stand is { } stand)
            parcel.Stand = stand;
        if (Flags is { } flags)
            parcel.SiteFlags = [.. flags];
    }
}
