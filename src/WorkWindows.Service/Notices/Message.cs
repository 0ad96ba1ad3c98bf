using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>A mail that is to be sent once, written in the same transaction as what it tells of.</summary>
public sealed class Message : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>What the mail is about, so that a job that runs twice writes it once.</summary>
    public required string DedupeKey { get; init; }

    public required string Kind { get; init; }
    public required Guid RecipientId { get; init; }
    public required string ToAddress { get; init; }
    public required string Subject { get; init; }
    public required string TextBody { get; init; }
    public required string HtmlBody { get; init; }

    /// <summary>The iCalendar text to attach, or null for none.</summary>
    public string? Calendar { get; init; }

    /// <summary>The RFC 5322 Message-ID: the same at every attempt, so that a receiver can tell a repeat.</summary>
    public required string MessageId { get; init; }

    public required Instant CreatedAt { get; init; }
    public int Attempts { get; set; }
    public required Instant NextAttemptAt { get; set; }
    public Instant? LeasedUntil { get; set; }
    public Instant? SentAt { get; set; }

    /// <summary>When it was given up.</summary>
    public Instant? DeadAt { get; set; }

    public string? LastError { get; set; }

    /// <param name="draft">What to say, and to whom.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="date">The organization's date, which orders what calendars are told.</param>
    /// <param name="options">The sender.</param>
    public static Message Of(NoticeDraft draft, Instant now, LocalDate date, MailOptions options)
    {
        var id = Guid.CreateVersion7();
        return new()
        {
            Id = id,
            DedupeKey = draft.Key,
            Kind = draft.Kind,
            RecipientId = draft.To.Id,
            ToAddress = draft.To.Address!,
            Subject = draft.Notice.Subject,
            TextBody = NoticeText.Of(draft.Notice),
            HtmlBody = NoticeHtml.Of(draft.Notice),
            Calendar = draft.Calendar is { } calendar
                ? CalendarFile.Of(calendar, date, now, options.SenderAddress, options.MessageDomain)
                : null,
            MessageId = $"{id:N}@{options.MessageDomain}",
            CreatedAt = now,
            NextAttemptAt = now,
        };
    }
}

internal sealed class MessageMapping : IEntityTypeConfiguration<Message>
{
    public void Configure(EntityTypeBuilder<Message> builder)
    {
        builder.ToTable("messages");
        builder.HasIndex(message => new { message.OrganizationId, message.DedupeKey }).IsUnique();
        builder.HasIndex(message => new { message.OrganizationId, message.NextAttemptAt })
            .HasFilter("sent_at is null and dead_at is null");
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.RecipientId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
