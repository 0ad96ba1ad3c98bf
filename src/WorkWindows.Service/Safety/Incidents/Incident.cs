using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>
/// Something that went wrong, or nearly. Only ever added: the application may not change it, and a correction is a
/// further entry.
/// </summary>
public sealed class Incident : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }

    /// <summary>The entry that this one corrects, or null.</summary>
    public Guid? CorrectsId { get; init; }

    public required IncidentKind Kind { get; init; }
    public required Instant HappenedAt { get; init; }

    /// <summary>The day that it happened on in the property's zone.</summary>
    public required LocalDate Day { get; init; }

    public required string WhatHappened { get; init; }

    /// <summary>Who was told.</summary>
    public required string WhoWasTold { get; init; }

    /// <summary>
    /// The day's state, signals and rules in force as JSON, as they were known when this was recorded.
    /// </summary>
    public required string Conditions { get; init; }

    /// <summary>The decision about the day that stood at that hour, or null where none was made before it.</summary>
    public string? DecisionHash { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? RecordedById { get; init; }

    public required string RecordedBy { get; init; }
    public required Instant RecordedAt { get; init; }
}

/// <summary>How bad it was. Stored by name.</summary>
public enum IncidentKind
{
    Injury,
    PropertyDamage,

    /// <summary>Nobody was hurt and nothing damaged, by luck.</summary>
    NearMiss,
}

internal sealed class IncidentMapping : IEntityTypeConfiguration<Incident>
{
    public void Configure(EntityTypeBuilder<Incident> builder)
    {
        builder.ToTable("incidents", table =>
            table.HasCheckConstraint("ck_incidents_what_happened", "what_happened <> ''"));
        builder.Property(incident => incident.Kind).HasConversion<string>();
        builder.Property(incident => incident.Conditions).HasColumnType("jsonb");
        builder.HasIndex(incident => new { incident.OrganizationId, incident.HappenedAt });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(incident => incident.TaskId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Incident>().WithMany().HasForeignKey(incident => incident.CorrectsId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(incident => incident.RecordedById)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
