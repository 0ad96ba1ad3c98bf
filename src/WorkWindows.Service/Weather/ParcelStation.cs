using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>What a station is consulted for. Stored by name.</summary>
public enum StationPurpose
{
    Temperature,
    Wind,
}

/// <summary>The station that a parcel takes its temperatures, or its winds, from.</summary>
public sealed class ParcelStation : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public required Guid ParcelId { get; init; }
    public required StationPurpose Purpose { get; init; }
    public required Guid StationId { get; set; }

    /// <summary>Someone chose it; otherwise the nearest station with a usable record takes its place.</summary>
    public bool IsManual { get; set; }

    /// <summary>Great-circle distance from the parcel to the station, metres.</summary>
    public required double DistanceM { get; set; }

    /// <summary>The station's elevation less the parcel's, metres; null when either is not known.</summary>
    public double? ElevationDifferenceM { get; set; }

    public Station Station { get; private set; } = null!;
}

internal sealed class ParcelStationMapping : IEntityTypeConfiguration<ParcelStation>
{
    public void Configure(EntityTypeBuilder<ParcelStation> builder)
    {
        builder.ToTable("parcel_stations");
        builder.HasKey(link => new { link.ParcelId, link.Purpose });
        builder.Property(link => link.Purpose).HasConversion<string>();
        builder.HasOne<Parcel>().WithMany().HasForeignKey(link => link.ParcelId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne(link => link.Station).WithMany().HasForeignKey(link => link.StationId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
