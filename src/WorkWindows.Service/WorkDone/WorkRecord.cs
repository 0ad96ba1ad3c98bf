using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.WorkDone;

/// <summary>What was done on a task on one day, as somebody who was there says. Only ever added.</summary>
public sealed class WorkRecord : ITenantRow
{
    /// <summary>Given by whoever hands it in, so that handing it in again adds nothing.</summary>
    public required Guid Id { get; init; }

    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }

    /// <summary>The day in the property's zone.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>The crew; null where it was nobody's crew.</summary>
    public Guid? CrewId { get; init; }

    public required int People { get; init; }

    /// <summary>Hours at the work of everybody together.</summary>
    public required decimal PersonHours { get; init; }

    /// <summary>How much was done, in the unit of the task; null where nobody measured.</summary>
    public decimal? Quantity { get; init; }

    /// <summary>Stems that were cut; null where nobody counted.</summary>
    public int? Stems { get; init; }

    /// <summary>What stood in the way, or null.</summary>
    public string? Problem { get; init; }

    /// <summary>Whether the task is done with it.</summary>
    public required bool IsLast { get; init; }

    public required Instant RecordedAt { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? RecordedById { get; init; }

    public required string RecordedBy { get; init; }
    public ICollection<WorkPhoto> Photos { get; } = [];
}

/// <summary>A photo of work.</summary>
public sealed class WorkPhoto : ITenantRow
{
    /// <summary>Given by whoever hands it in.</summary>
    public required Guid Id { get; init; }

    public Guid OrganizationId { get; private set; }
    public required Guid RecordId { get; init; }

    /// <summary>image/jpeg, image/png or image/webp.</summary>
    public required string ContentType { get; init; }

    public required byte[] Bytes { get; init; }
}

internal sealed class WorkRecordMapping : IEntityTypeConfiguration<WorkRecord>, IEntityTypeConfiguration<WorkPhoto>
{
    public void Configure(EntityTypeBuilder<WorkRecord> builder)
    {
        builder.ToTable("work_records", table =>
        {
            table.HasCheckConstraint("ck_work_records_people", "people > 0");
            table.HasCheckConstraint("ck_work_records_hours", "person_hours <> 0");
        });
        builder.HasIndex(record => new { record.OrganizationId, record.TaskId, record.Day });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(record => record.TaskId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Crew>().WithMany().HasForeignKey(record => record.CrewId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(record => record.RecordedById)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(record => record.Photos).WithOne().HasForeignKey(photo => photo.RecordId)
            .OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<WorkPhoto> builder) => builder.ToTable("work_photos");
}
