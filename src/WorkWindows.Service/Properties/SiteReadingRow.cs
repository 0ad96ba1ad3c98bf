using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>What someone read on a property; it takes the place of a signal until it expires.</summary>
public sealed class SiteReadingRow : ITenantRow
{
    /// <summary>The longest that a reading may be relied on after the day it was taken.</summary>
    public const int LongestDays = 14;

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid PropertyId { get; init; }
    public required SignalKind Signal { get; init; }

    /// <summary>The reading in the unit of the signal.</summary>
    public required double Value { get; init; }

    /// <summary>The reading as it was given, with its unit.</summary>
    public required string Given { get; init; }

    public required LocalDate SeenOn { get; init; }

    /// <summary>The last day that it stands for, included.</summary>
    public required LocalDate Until { get; init; }

    public string? Note { get; init; }
    public required Guid RecordedById { get; init; }
    public required Instant RecordedAt { get; init; }
    public Person RecordedBy { get; private set; } = null!;
}

internal sealed class SiteReadingRowMapping : IEntityTypeConfiguration<SiteReadingRow>
{
    public void Configure(EntityTypeBuilder<SiteReadingRow> builder)
    {
        builder.ToTable("site_readings", table => table.HasCheckConstraint(
            "ck_site_readings_days", $"until >= seen_on and until - seen_on <= {SiteReadingRow.LongestDays}"));
        builder.Property(reading => reading.Signal).HasConversion<string>();
        builder.HasIndex(reading => new { reading.OrganizationId, reading.PropertyId, reading.Until });
        builder.HasOne<Property>().WithMany().HasForeignKey(reading => reading.PropertyId)
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasOne(reading => reading.RecordedBy).WithMany().HasForeignKey(reading => reading.RecordedById)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
