using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>What became of a plan. Stored by name.</summary>
public enum PlanStatus
{
    /// <summary>Nobody is told of it yet.</summary>
    Proposed,

    /// <summary>Its days were told to crews.</summary>
    Published,

    /// <summary>Nobody was told of it, and nobody will be.</summary>
    Discarded,
}

/// <summary>A plan as it was computed. Its content never changes; it is published or discarded, and kept.</summary>
public sealed class StoredPlan : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Instant ProposedAt { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? ProposedById { get; init; }

    public required string ProposedBy { get; init; }
    public required LocalDate FirstDay { get; init; }

    /// <summary>The last day that it plans, included.</summary>
    public required LocalDate LastDay { get; init; }

    public required PlanStatus Status { get; set; }

    /// <summary>When it was published or discarded.</summary>
    public Instant? DecidedAt { get; set; }

    public string? DecidedBy { get; set; }

    /// <summary>Bookings, what was left out and why, differences in words, weights, bound and seed, as JSON.</summary>
    public required string Content { get; init; }
}

internal sealed class StoredPlanMapping : IEntityTypeConfiguration<StoredPlan>
{
    public void Configure(EntityTypeBuilder<StoredPlan> builder)
    {
        builder.ToTable("crew_plans");
        builder.Property(plan => plan.Status).HasConversion<string>();
        builder.Property(plan => plan.Content).HasColumnType("jsonb");
        builder.HasIndex(plan => new { plan.OrganizationId, plan.ProposedAt });
        builder.HasOne<Person>().WithMany().HasForeignKey(plan => plan.ProposedById).OnDelete(DeleteBehavior.Restrict);
    }
}
