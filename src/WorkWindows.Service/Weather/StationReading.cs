using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>One value of one day, in the unit of its element, as it is known now.</summary>
public sealed class StationReading : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public required Guid StationId { get; init; }
    public required DailyElement Element { get; init; }
    public required LocalDate Date { get; init; }
    public required double Value { get; set; }

    /// <summary>The flag of the source that rejects the value, or null for a value that may be used.</summary>
    public char? QualityFlag { get; set; }

    /// <summary>When it became known; the beginning of time where that was not recorded.</summary>
    public required Instant KnownSince { get; set; }
}

/// <summary>A value that another one of the same day took the place of. Never changed, never deleted.</summary>
public sealed class SupersededReading : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public required Guid StationId { get; init; }
    public required DailyElement Element { get; init; }
    public required LocalDate Date { get; init; }
    public required double Value { get; init; }
    public char? QualityFlag { get; init; }

    /// <summary>When it became known; the beginning of time where that was not recorded.</summary>
    public required Instant KnownSince { get; init; }

    /// <summary>When the value that followed became known: from then on it is not what is known.</summary>
    public required Instant KnownUntil { get; init; }
}

internal sealed class StationReadingMapping
    : IEntityTypeConfiguration<StationReading>, IEntityTypeConfiguration<SupersededReading>
{
    public void Configure(EntityTypeBuilder<StationReading> builder)
    {
        builder.ToTable("station_readings");
        builder.HasKey(reading => new { reading.StationId, reading.Date, reading.Element });
        builder.Property(reading => reading.Element).HasConversion<short>();
        builder.HasOne<Station>().WithMany().HasForeignKey(reading => reading.StationId)
            .OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<SupersededReading> builder)
    {
        builder.ToTable("superseded_readings", table =>
            table.HasCheckConstraint("ck_superseded_readings_known", "known_since < known_until"));
        builder.HasKey(reading => new { reading.StationId, reading.Date, reading.Element, reading.KnownSince });
        builder.Property(reading => reading.Element).HasConversion<short>();
        builder.HasOne<Station>().WithMany().HasForeignKey(reading => reading.StationId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
