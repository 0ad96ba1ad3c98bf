using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Rules;

/// <summary>A person's exception to a rule on a property, a parcel of it or one task. Never deleted.</summary>
public sealed class StoredOverride : ITenantRow
{
    /// <summary>The longest that an exception may last.</summary>
    public const int LongestDays = 366;

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid PropertyId { get; init; }

    /// <summary>The one parcel that it is for, or null for all of the property.</summary>
    public Guid? ParcelId { get; init; }

    /// <summary>The one task that it is for, or null for all of them.</summary>
    public Guid? TaskId { get; init; }

    public required string RuleId { get; init; }
    public required LocalDate FirstDay { get; init; }

    /// <summary>The day on which it expires, included.</summary>
    public required LocalDate LastDay { get; init; }

    public required string Reason { get; init; }
    public required Guid MadeById { get; init; }
    public required Instant MadeAt { get; init; }
    public Guid? WithdrawnById { get; set; }
    public Instant? WithdrawnAt { get; set; }
    public Person MadeBy { get; private set; } = null!;
}

internal sealed class StoredOverrideMapping : IEntityTypeConfiguration<StoredOverride>
{
    public void Configure(EntityTypeBuilder<StoredOverride> builder)
    {
        builder.ToTable("rule_overrides", table =>
        {
            table.HasCheckConstraint(
                "ck_rule_overrides_days",
                $"first_day <= last_day and last_day - first_day < {StoredOverride.LongestDays}");
            table.HasCheckConstraint("ck_rule_overrides_reason", "reason <> ''");
            table.HasCheckConstraint(
                "ck_rule_overrides_withdrawn", "(withdrawn_at is null) = (withdrawn_by_id is null)");
        });
        builder.HasIndex(row => new { row.OrganizationId, row.PropertyId, row.LastDay });
        // With the property, parcel or task that it was for it says nothing more; the audit keeps what it said.
        builder.HasOne<Property>().WithMany().HasForeignKey(row => row.PropertyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Parcel>().WithMany().HasForeignKey(row => row.ParcelId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(row => row.TaskId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne(row => row.MadeBy).WithMany().HasForeignKey(row => row.MadeById)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(row => row.WithdrawnById).OnDelete(DeleteBehavior.Restrict);
    }
}
