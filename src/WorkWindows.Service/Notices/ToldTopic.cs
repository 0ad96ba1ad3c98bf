using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Something that a person is told once, whichever message tells it along with other things.</summary>
public sealed class ToldTopic : ITenantRow
{
    public required Guid PersonId { get; init; }

    /// <summary>What it is, such as the season of a task that opens in a year.</summary>
    public required string Topic { get; init; }

    public Guid OrganizationId { get; private set; }
    public required Instant ToldAt { get; init; }
}

internal sealed class ToldTopicMapping : IEntityTypeConfiguration<ToldTopic>
{
    public void Configure(EntityTypeBuilder<ToldTopic> builder)
    {
        builder.ToTable("told_topics");
        builder.HasKey(topic => new { topic.PersonId, topic.Topic });
        builder.HasOne<Person>().WithMany().HasForeignKey(topic => topic.PersonId).OnDelete(DeleteBehavior.Cascade);
    }
}
