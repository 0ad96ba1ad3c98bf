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

    /// <summary>What a key goes on with that another message may take.</summary>
    private const string Freed = ":superseded:";

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>What the mail is about, so that a job that runs twice writes it once.</summary>
    public required string DedupeKey { get; set; }

    /// <summary>What a message and the same by the other way are about: its key without the way.</summary>
    public static string KeyOf(string dedupeKey) => dedupeKey.EndsWith(WebhookSuffix, StringComparison.Ordinal)
        ? dedupeKey[..^WebhookSuffix.Length]
        : dedupeKey;

    /// <summary>The same also where another message has taken the key.</summary>
    internal static string AboutOf(string dedupeKey) =>
        KeyOf(dedupeKey.Split(Freed, 2, StringSplitOptions.None)[0]);

    public required string Kind { get; init; }

    /// <summary>The person, or null for somebody outside of the organization.</summary>
    public Guid? RecipientId { get; init; }

    /// <summary>Mail or webhook.</summary>
    public NoticeChannels Channel { get; init; } = NoticeChannels.Mail;

    public required string ToAddress { get; set; }
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

    /// <summary>When the server took it. That it came back later stands beside it.</summary>
    public Instant? SentAt { get; set; }

    /// <summary>When it was given up.</summary>
    public Instant? DeadAt { get; private set; }

    /// <summary>Why it was given up; null while it was not.</summary>
    public GivenUp? GivenUp { get; private set; }

    /// <summary>What hindered it last, in a few words without anything personal.</summary>
    public string? LastError { get; set; }

    /// <param name="at">When.</param>
    /// <param name="why">Why, for programs.</param>
    /// <param name="reason">Why, in a few words without anything personal.</param>
    public void GiveUp(Instant at, GivenUp why, string reason) => (DeadAt, GivenUp, LastError) = (at, why, reason);

    /// <summary>Has it wait in the outbox as if it had just been written, under the same Message-ID.</summary>
    /// <param name="now">From when on it may be sent.</param>
    /// <param name="address">Where to.</param>
    public void Revive(Instant now, string address)
    {
        (DeadAt, GivenUp, LastError, SentAt, LeasedUntil) = (null, null, null, null, null);
        (Attempts, NextAttemptAt, ToAddress) = (0, now, address);
    }

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

    /// <summary>A mail, and the same to the person's webhook where they have one: what must not be missed.</summary>
    /// <param name="key">What it is about.</param>
    /// <param name="kind">One of <see cref="NoticeKinds"/>.</param>
    /// <param name="to">Whom it is for.</param>
    /// <param name="notice">What it says.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="options">The sender.</param>
    public static IEnumerable<Message> EveryWay(
        string key, string kind, Reachable to, Notice notice, Instant now, MailOptions options)
    {
        if (to.Mail is { } address)
            yield return Of(key, kind, to.PersonId, address, notice, now, options);
        if (to.Webhook is { } webhook)
        {
            yield return Of(
                key + WebhookSuffix, kind, to.PersonId, webhook, notice, now, options,
                channel: NoticeChannels.Webhook);
        }
    }

    /// <summary>Gives it up because something else is true by now; another message may take its key.</summary>
    public void Supersede(Instant now, string reason)
    {
        FreeKey();
        GiveUp(now, Notices.GivenUp.Superseded, reason);
    }

    /// <summary>Whether another message may have taken its key: what this one says is not true any more.</summary>
    public bool IsReplaced => DedupeKey.Contains(Freed, StringComparison.Ordinal);

    /// <summary>Lets another message take its key; what has become of this one stays.</summary>
    public void FreeKey() => DedupeKey = $"{DedupeKey}{Freed}{Id}";
}

/// <summary>Why a message is not sent any more. Stored by name.</summary>
public enum GivenUp
{
    /// <summary>It was refused too often, came back, or killed every worker that took it.</summary>
    Failed,

    /// <summary>There is no such mailbox.</summary>
    AddressBounces,

    /// <summary>A later message says otherwise.</summary>
    Superseded,

    /// <summary>The recipient does not want it, or has no webhook any more.</summary>
    TurnedOff,
}

internal sealed class MessageMapping : IEntityTypeConfiguration<Message>
{
    private const string Urgency = "Urgency";

    public void Configure(EntityTypeBuilder<Message> builder)
    {
        builder.ToTable("messages");
        builder.Property(message => message.Channel).HasConversion<string>().HasDefaultValue(NoticeChannels.Mail);
        builder.Ignore(message => message.IsReplaced);
        builder.HasIndex(message => new { message.OrganizationId, message.DedupeKey }).IsUnique();
        builder.Property(message => message.GivenUp).HasConversion<string>();
        builder.HasIndex(message => message.MessageId);
        // The order in which they leave: without it each lease would sort all that wait.
        builder.Property<short>(Urgency).HasComputedColumnSql(
            $"case kind when '{NoticeKinds.MissedCheckIn}' then 0 when '{NoticeKinds.CrewFine}' then 1 "
            + $"when '{NoticeKinds.TakenOver}' then 1 when '{NoticeKinds.StopWork}' then 2 "
            + $"when '{NoticeKinds.Unreachable}' then 2 when '{NoticeKinds.DoNotStart}' then 3 else 4 end",
            stored: true);
        builder.HasIndex(
                nameof(Message.OrganizationId), Urgency, nameof(Message.NextAttemptAt), nameof(Message.CreatedAt))
            .HasDatabaseName("ix_messages_outbox").HasFilter("sent_at is null and dead_at is null");
        builder.HasIndex(message => new { message.OrganizationId, message.CreatedAt });
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.RecipientId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
