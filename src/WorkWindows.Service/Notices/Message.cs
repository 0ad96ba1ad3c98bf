using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>A mail that is to be sent once, written in the same transaction as what it tells of.</summary>
public sealed class Message : ITenantRow
{
    /// <summary>What the key of a webhook ends with, where a mail has the same.</summary>
    public const string WebhookSuffix = ":webhook";

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>What the mail is about, so that a job that runs twice writes it once.</summary>
    public required string DedupeKey { get; set; }

    public required string Kind { get; init; }

    /// <summary>The person, or null for somebody outside of the organization.</summary>
    public Guid? RecipientId { get; init; }

    /// <summary>Mail or webhook.</summary>
    public NoticeChannels Channel { get; init; } = NoticeChannels.Mail;

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

    /// <param name="draft">What to say, to whom, and in which way.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="options">The sender.</param>
    /// <param name="calendar">The iCalendar text that goes with it, or null for none.</param>
    public static Message Of(NoticeDraft draft, Instant now, MailOptions options, string? calendar)
    {
        var wishes = draft.To.Wishes;
        var isWebhook = draft.Channel == NoticeChannels.Webhook;
        return Of(
            isWebhook ? draft.Key + WebhookSuffix : draft.Key, draft.Kind, draft.To.Id,
            isWebhook ? wishes.Webhook! : draft.To.Address!, draft.Notice, now, options, calendar, draft.Channel,
            isWebhook ? now : wishes.Earliest(NoticeKinds.Find(draft.Kind)!, now));
    }

    /// <param name="key">What it is about.</param>
    /// <param name="kind">One of <see cref="NoticeKinds"/>.</param>
    /// <param name="personId">Whom it is for, or null for somebody outside of the organization.</param>
    /// <param name="address">The mail address.</param>
    /// <param name="notice">What it says.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="options">The sender.</param>
    /// <param name="calendar">The iCalendar text to attach, or null for none.</param>
    /// <param name="channel">Mail or webhook.</param>
    /// <param name="earliest">When it may go out; at once by default.</param>
    public static Message Of(
        string key, string kind, Guid? personId, string address, Notice notice, Instant now, MailOptions options,
        string? calendar = null, NoticeChannels channel = NoticeChannels.Mail, Instant? earliest = null)
    {
        var id = Guid.CreateVersion7();
        return new()
        {
            Id = id,
            DedupeKey = key,
            Kind = kind,
            RecipientId = personId,
            ToAddress = address,
            Subject = notice.Subject,
            TextBody = NoticeText.Of(notice),
            HtmlBody = NoticeHtml.Of(notice),
            Calendar = calendar,
            MessageId = $"{id:N}@{options.MessageDomain}",
            CreatedAt = now,
            Channel = channel,
            NextAttemptAt = earliest ?? now,
        };
    }

    /// <summary>Gives it up because something else is true by now; another message may take its key.</summary>
    public void Supersede(Instant now, string reason)
    {
        DedupeKey = $"{DedupeKey}:superseded:{Id}";
        (DeadAt, LastError) = (now, reason);
    }
}

internal sealed class MessageMapping : IEntityTypeConfiguration<Message>
{
    public void Configure(EntityTypeBuilder<Message> builder)
    {
        builder.ToTable("messages");
        builder.Property(message => message.Channel).HasConversion<string>().HasDefaultValue(NoticeChannels.Mail);
        builder.HasIndex(message => new { message.OrganizationId, message.DedupeKey }).IsUnique();
        builder.HasIndex(message => new { message.OrganizationId, message.NextAttemptAt })
            .HasFilter("sent_at is null and dead_at is null");
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.RecipientId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
