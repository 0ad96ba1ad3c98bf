using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Notices;

/// <summary>A window that someone was told of, so that its early end can be told to them too.</summary>
public sealed class Announcement : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }
    public required Guid PersonId { get; init; }
    public required LocalDate FirstDay { get; init; }

    /// <summary>The last workable day that was named, included.</summary>
    public required LocalDate LastDay { get; set; }

    /// <summary>The key of the message that tells of it; null where it was told in another way.</summary>
    public string? MessageKey { get; init; }

    public required Instant AnnouncedAt { get; init; }
    public Instant? StoppedAt { get; set; }
}

internal sealed class AnnouncementMapping : IEntityTypeConfiguration<Announcement>
{
    public void Configure(EntityTypeBuilder<Announcement> builder)
    {
        builder.ToTable("announcements");
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(announcement => announcement.TaskId)
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Person>().WithMany().HasForeignKey(announcement => announcement.PersonId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
