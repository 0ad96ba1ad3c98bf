using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Notices.Seasons;

/// <summary>Until when a person was told that a task's season lasts, so that an earlier end can be told too.</summary>
public sealed class SeasonEnd : ITenantRow
{
    public required Guid TaskId { get; init; }
    public required Guid PersonId { get; init; }
    public Guid OrganizationId { get; private set; }

    /// <summary>The last day of the season, as it was told last.</summary>
    public required LocalDate LastDay { get; set; }

    public required Instant ToldAt { get; set; }
}

internal sealed class SeasonEndMapping : IEntityTypeConfiguration<SeasonEnd>
{
    public void Configure(EntityTypeBuilder<SeasonEnd> builder)
    {
        builder.ToTable("season_ends");
        builder.HasKey(end => new { end.TaskId, end.PersonId });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(end => end.TaskId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Person>().WithMany().HasForeignKey(end => end.PersonId).OnDelete(DeleteBehavior.Cascade);
    }
}
