using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tasks;

/// <summary>A practice that is to be carried out on a parcel.</summary>
public sealed class PlannedTask : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>The organization's own name for it in files, so that an import can be repeated.</summary>
    public required string Key { get; init; }

    public required Guid ParcelId { get; set; }

    /// <summary>A key of the practice catalogue.</summary>
    public required string PracticeId { get; set; }

    public decimal? Quantity { get; set; }

    /// <summary>What the quantity counts, such as 'acres' or 'stems'; null exactly when there is no quantity.</summary>
    public string? QuantityUnit { get; set; }

    public required int CrewSize { get; set; }
    public Guid? CrewLeadId { get; set; }
    public LocalDate? Deadline { get; set; }

    /// <summary>The first day on which it may be done, such as a year after what it follows; null for any.</summary>
    public LocalDate? NotBefore { get; set; }

    /// <summary>The work that it follows in later years: its completion sets the first day and the deadline.</summary>
    public Guid? FollowsId { get; set; }

    /// <summary>Hours of one person as the consultant estimates them, least and most; null for published rates.</summary>
    public decimal? HoursLow { get; set; }

    public decimal? HoursHigh { get; set; }

    /// <summary>What it is worth, points of the consultant's own; null for its practice's weight.</summary>
    public decimal? Points { get; set; }

    public LocalDate? ScheduledOn { get; set; }
    public LocalDate? CompletedOn { get; set; }
    public Parcel Parcel { get; private set; } = null!;
    public Person? CrewLead { get; private set; }
    public ICollection<TaskPrerequisite> Prerequisites { get; } = [];

    /// <summary>Replaces the prerequisites, which must have been loaded.</summary>
    public void ComeAfter(IReadOnlyCollection<Guid> tasks)
    {
        foreach (var link in Prerequisites.Where(link => !tasks.Contains(link.PrerequisiteId)).ToList())
            Prerequisites.Remove(link);
        var kept = Prerequisites.Select(link => link.PrerequisiteId).ToList();
        foreach (var earlier in tasks.Except(kept))
            Prerequisites.Add(new() { TaskId = Id, PrerequisiteId = earlier });
    }
}

internal sealed class PlannedTaskMapping : IEntityTypeConfiguration<PlannedTask>
{
    public void Configure(EntityTypeBuilder<PlannedTask> builder)
    {
        builder.ToTable("planned_tasks", table =>
        {
            table.HasCheckConstraint("ck_planned_tasks_crew_size", "crew_size > 0");
            table.HasCheckConstraint(
                "ck_planned_tasks_quantity", "(quantity is null) = (quantity_unit is null) and quantity > 0");
            table.HasCheckConstraint("ck_planned_tasks_hours",
                "(hours_low is null) = (hours_high is null) and hours_low > 0 and hours_low <= hours_high");
            table.HasCheckConstraint("ck_planned_tasks_points", "points >= 0");
            table.HasCheckConstraint("ck_planned_tasks_follows", "follows_id <> id");
        });
        builder.HasIndex(task => new { task.OrganizationId, task.Key }).IsUnique();
        builder.HasOne(task => task.Parcel).WithMany().HasForeignKey(task => task.ParcelId)
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(task => task.FollowsId)
            .OnDelete(DeleteBehavior.SetNull);
        builder.HasOne(task => task.CrewLead).WithMany().HasForeignKey(task => task.CrewLeadId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
