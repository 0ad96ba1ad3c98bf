using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>A management unit of a property.</summary>
public sealed class Parcel : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid PropertyId { get; init; }

    /// <summary>The organization's own name for it in files, so that an import can be repeated.</summary>
    public required string Key { get; init; }

    public required string Name { get; set; }

    /// <summary>A GeoJSON geometry in WGS 84, or null where only a point is known.</summary>
    public string? BoundaryGeoJson { get; set; }

    /// <summary>Degrees north, WGS 84: of the given point, or of a point inside the boundary.</summary>
    public required double Latitude { get; set; }

    /// <summary>Degrees east, WGS 84.</summary>
    public required double Longitude { get; set; }

    /// <summary>Metres above sea level, as entered; null when it is not known.</summary>
    public double? ElevationM { get; set; }

    /// <summary>Area on the ellipsoid, m², or null without a boundary.</summary>
    public double? AreaM2 { get; set; }

    /// <summary>The trees that stand there; null when no inventory has been taken.</summary>
    public IReadOnlyList<StandRow>? Stand { get; set; }

    public List<SiteFlag> SiteFlags { get; set; } = [];
    public Property Property { get; private set; } = null!;

    /// <summary>Puts it where a file or a person says it lies.</summary>
    public void Place(ParcelSite site)
    {
        // The database writes JSON in its own way, so that equal boundaries may differ as texts.
        if (!JsonNode.DeepEquals(Json(BoundaryGeoJson), Json(site.BoundaryGeoJson)))
            BoundaryGeoJson = site.BoundaryGeoJson;
        (Latitude, Longitude, AreaM2) = (site.LatitudeDeg, site.LongitudeDeg, site.AreaM2);

        static JsonNode? Json(string? text) => text is null ? null : JsonNode.Parse(text);
    }
}

internal sealed class ParcelMapping : IEntityTypeConfiguration<Parcel>
{
    public void Configure(EntityTypeBuilder<Parcel> builder)
    {
        builder.ToTable("parcels");
        builder.HasIndex(parcel => new { parcel.OrganizationId, parcel.Key }).IsUnique();
        builder.HasOne(parcel => parcel.Property).WithMany(property => property.Parcels)
            .HasForeignKey(parcel => parcel.PropertyId).OnDelete(DeleteBehavior.Cascade);
        builder.Property(parcel => parcel.BoundaryGeoJson).HasColumnType("jsonb");
        builder.Property(parcel => parcel.Stand).HasColumnType("jsonb")
            .HasConversion(StandJson.Converter, StandJson.Comparer);
        builder.PrimitiveCollection(parcel => parcel.SiteFlags)
            .ElementType(flag => flag.HasConversion<string>());
    }
}
