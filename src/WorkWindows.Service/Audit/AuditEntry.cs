using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Audit;

/// <summary>Who changed what bears on verdicts, and how. Only ever added: the application may not change it.</summary>
public sealed class AuditEntry : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Instant At { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? PersonId { get; init; }

    /// <summary>The name that the person or the machine's key had then.</summary>
    public required string By { get; init; }

    public required AuditKind Kind { get; init; }

    /// <summary>The row that was changed; it may be gone by now.</summary>
    public required Guid RowId { get; init; }

    /// <summary>What the row said before, as JSON; null when it was created.</summary>
    public string? Before { get; init; }

    /// <summary>What it says from then on, as JSON; null when it was deleted.</summary>
    public string? After { get; init; }
}

/// <summary>What an entry is about. Stored by name.</summary>
public enum AuditKind
{
    /// <summary>An exception to a rule.</summary>
    Override,

    /// <summary>A leaf-out that was seen.</summary>
    LeafOut,

    /// <summary>A reading on the site.</summary>
    SiteReading,

    /// <summary>A rule pack of the organization or of a property.</summary>
    RulePack,

    /// <summary>An injury, a damage or a near miss that was recorded.</summary>
    Incident,

    /// <summary>What a person wants to be told, and how.</summary>
    NoticeChoice,

    /// <summary>The personal link to a landowner's page.</summary>
    LandLink,

    /// <summary>A checklist that was acknowledged.</summary>
    ChecklistSignature,

    /// <summary>A message that was given up and is sent again.</summary>
    Message,

    /// <summary>A mail address that bounced and is said to work again.</summary>
    BouncingAddress,
}

internal sealed class AuditEntryMapping : IEntityTypeConfiguration<AuditEntry>
{
    public void Configure(EntityTypeBuilder<AuditEntry> builder)
    {
        builder.ToTable("audit_entries");
        builder.Property(entry => entry.Kind).HasConversion<string>();
        builder.Property(entry => entry.Before).HasColumnType("jsonb");
        builder.Property(entry => entry.After).HasColumnType("jsonb");
        builder.HasIndex(entry => new { entry.OrganizationId, entry.At });
        builder.HasOne<Person>().WithMany().HasForeignKey(entry => entry.PersonId).OnDelete(DeleteBehavior.Restrict);
    }
}
