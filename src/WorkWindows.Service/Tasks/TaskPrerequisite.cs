using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tasks;

/// <summary>A task that must be done before another can start.</summary>
public sealed class TaskPrerequisite : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }
    public required Guid PrerequisiteId { get; init; }
}

internal sealed class TaskPrerequisiteMapping : IEntityTypeConfiguration<TaskPrerequisite>
{
    public void Configure(EntityTypeBuilder<TaskPrerequisite> builder)
    {
        builder.ToTable("task_prerequisites", table =>
            table.HasCheckConstraint("ck_task_prerequisites_other", "task_id <> prerequisite_id"));
        builder.HasKey(link => new { link.TaskId, link.PrerequisiteId });
        builder.HasOne<PlannedTask>().WithMany(task => task.Prerequisites).HasForeignKey(link => link.TaskId)
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(link => link.PrerequisiteId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
