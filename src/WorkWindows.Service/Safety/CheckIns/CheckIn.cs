using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A sign of life of a crew. Only ever added: the application may not change it.</summary>
public sealed class CheckIn : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid WatchId { get; init; }

    /// <summary>Counts the signs of life of a watch from 0: it orders them whatever a clock did.</summary>
    public required int Number { get; init; }

    public required CheckInKind Kind { get; init; }
    public required Instant At { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? ById { get; init; }

    public required string By { get; init; }
}

/// <summary>What the crew says of itself. Stored by name.</summary>
public enum CheckInKind
{
    /// <summary>The watch begins.</summary>
    Started,

    Fine,

    /// <summary>The crew has left the site: the watch ends.</summary>
    Out,
}

internal sealed class CheckInMapping : IEntityTypeConfiguration<CheckIn>
{
    public void Configure(EntityTypeBuilder<CheckIn> builder)
    {
        builder.ToTable("check_ins");
        builder.Property(checkIn => checkIn.Kind).HasConversion<string>();
        builder.HasIndex(checkIn => new { checkIn.WatchId, checkIn.Number }).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(checkIn => checkIn.ById).OnDelete(DeleteBehavior.Restrict);
    }
}
