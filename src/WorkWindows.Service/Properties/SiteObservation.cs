using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>What someone saw on a property, one of a kind a year; it takes precedence over a prediction.</summary>
public sealed class SiteObservation : ITenantRow
{
    /// <summary>The kind of 'the buds have opened'.</summary>
    public const string LeafOut = "LeafOut";

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid PropertyId { get; init; }
    public required string Kind { get; init; }
    public required LocalDate ObservedOn { get; set; }
    public Guid? RecordedById { get; set; }
    public required Instant RecordedAt { get; set; }
    public string? Note { get; set; }
}

internal sealed class SiteObservationMapping : IEntityTypeConfiguration<SiteObservation>
{
    private const string Year = "ObservedYear";

    public void Configure(EntityTypeBuilder<SiteObservation> builder)
    {
        builder.ToTable("site_observations");
        builder.Property<int>(Year).HasComputedColumnSql("extract(year from observed_on)::int", stored: true);
        builder.HasIndex(
            nameof(SiteObservation.OrganizationId), nameof(SiteObservation.PropertyId),
            nameof(SiteObservation.Kind), Year).IsUnique();
        builder.HasOne<Property>().WithMany(property => property.Observations)
            .HasForeignKey(observation => observation.PropertyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Person>().WithMany().HasForeignKey(observation => observation.RecordedById)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
