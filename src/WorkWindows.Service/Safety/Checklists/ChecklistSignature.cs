using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>
/// Somebody of a crew has acknowledged each line of a task's checklist for a day. Only ever added: the application may
/// not change it.
/// </summary>
public sealed class ChecklistSignature : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }

    /// <summary>The day in the property's zone.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>The hash of what was shown and acknowledged.</summary>
    public required string Version { get; init; }

    /// <summary>What was shown, line by line, as JSON; its canonical bytes have the hash.</summary>
    public required string Content { get; init; }

    /// <summary>Made where it was signed, so that what is sent again is stored once.</summary>
    public required Guid Key { get; init; }

    public required Guid PersonId { get; init; }

    /// <summary>The name that the person had then.</summary>
    public required string Person { get; init; }

    /// <summary>The role that the person had then.</summary>
    public required Role Role { get; init; }

    /// <summary>The name as it was typed to sign.</summary>
    public required string TypedName { get; init; }

    /// <summary>Why a consultant releases the work in place of its crew lead; null for every other signature.</summary>
    public string? InsteadBecause { get; init; }

    /// <summary>By the clock of the phone, which may be wrong.</summary>
    public required Instant SignedAt { get; init; }

    /// <summary>By the clock of the server.</summary>
    public required Instant ReceivedAt { get; init; }
}

internal sealed class ChecklistSignatureMapping : IEntityTypeConfiguration<ChecklistSignature>
{
    public void Configure(EntityTypeBuilder<ChecklistSignature> builder)
    {
        builder.ToTable("checklist_signatures", table =>
        {
            table.HasCheckConstraint("ck_checklist_signatures_typed_name", "typed_name <> ''");
            table.HasCheckConstraint("ck_checklist_signatures_version", "version ~ '^[0-9a-f]{64}$'");
            table.HasCheckConstraint(
                "ck_checklist_signatures_instead",
                "instead_because is null or (instead_because <> '' and role = 'Consultant')");
        });
        builder.Property(signature => signature.Content).HasColumnType("jsonb");
        builder.Property(signature => signature.Role).HasConversion<string>();
        builder.HasIndex(signature => new { signature.OrganizationId, signature.Key }).IsUnique();
        builder.HasIndex(signature => new { signature.OrganizationId, signature.TaskId, signature.Day });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(signature => signature.TaskId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(signature => signature.PersonId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
