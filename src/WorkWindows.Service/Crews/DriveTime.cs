using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>How long a drive takes, as handed in. A place is a property or the base of a crew.</summary>
public sealed class DriveTime : ITenantRow
{
    /// <summary>The property or the crew.</summary>
    public required Guid FromId { get; init; }

    public required Guid ToId { get; init; }
    public Guid OrganizationId { get; private set; }
    public required double Minutes { get; set; }
}

internal sealed class DriveTimeMapping : IEntityTypeConfiguration<DriveTime>
{
    public void Configure(EntityTypeBuilder<DriveTime> builder)
    {
        builder.ToTable("drive_times", table =>
            table.HasCheckConstraint("ck_drive_times_minutes", "minutes >= 0 and minutes <= 1440"));
        builder.HasKey(drive => new { drive.FromId, drive.ToId });
    }
}
