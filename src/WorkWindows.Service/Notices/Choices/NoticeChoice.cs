using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>
/// How a person wants to be told of one kind of notice. A kind without a row is told by mail and calendar.
/// </summary>
public sealed class NoticeChoice : ITenantRow
{
    public const NoticeChannels Unless = NoticeChannels.Mail | NoticeChannels.Calendar;

    public required Guid PersonId { get; init; }

    /// <summary>One of <see cref="NoticeKinds"/> that may be turned off.</summary>
    public required string Kind { get; init; }

    public Guid OrganizationId { get; private set; }
    public required NoticeChannels Channels { get; set; }
    public required Instant ChosenAt { get; set; }
}

internal sealed class NoticeChoiceMapping : IEntityTypeConfiguration<NoticeChoice>
{
    public void Configure(EntityTypeBuilder<NoticeChoice> builder)
    {
        builder.ToTable("notice_choices");
        builder.HasKey(choice => new { choice.PersonId, choice.Kind });
        builder.HasOne<Person>().WithMany().HasForeignKey(choice => choice.PersonId).OnDelete(DeleteBehavior.Cascade);
    }
}
