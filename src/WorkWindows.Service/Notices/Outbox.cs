using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Sends the messages of one organization that are due, each once.</summary>
public sealed partial class Outbox(
    WorkWindowsDb db, CurrentOrganization current, IMailTransport transport, IOptions<MailOptions> mail, IClock clock,
    ILogger<Outbox> logger)
{
    public const int MaxAttempts = 10;

    /// <summary>How long a worker may take over one message before it counts as dead.</summary>
    public static readonly Duration Lease = Duration.FromMinutes(5);

    /// <summary>Minutes to wait after each failed attempt; the last also after all later ones.</summary>
    private static readonly int[] WaitMinutes = [1, 5, 15, 60];

    /// <remarks>
    /// A message is marked as sent after the server has taken it. Whoever dies in between cannot know which it was: the
    /// message goes out again under the same Message-ID.
    /// </remarks>
    public async Task SendDueAsync(Guid organizationId, CancellationToken cancellation)
    {
        current.Set(organizationId);
        var sender = await db.Organizations.Select(organization => organization.Name).SingleAsync(cancellation);
        await using var session = transport.Open();
        while (!cancellation.IsCancellationRequested && await LeaseAsync(cancellation) is { } message)
        {
            if (!await SendAsync(message, sender, session))
                return;
            db.ChangeTracker.Clear();
        }
    }

    private async Task<Message?> LeaseAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var due = await db.Messages.FromSql($"""
            select * from messages
            where sent_at is null and dead_at is null and next_attempt_at <= {now}
              and (leased_until is null or leased_until <= {now})
            order by kind <> {NoticeKinds.MissedCheckIn}, kind <> {NoticeKinds.CrewFine}, kind <> {NoticeKinds.StopWork},
              next_attempt_at, created_at limit 1
            for update skip locked
            """).ToListAsync(cancellation);
        if (due is not [var message])
            return null;
        message.Attempts++;
        message.LeasedUntil = now + Lease;
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return message;
    }

    /// <returns>Whether the next message has a chance.</returns>
    /// <remarks>What has happened to the mail is written down even while the service stops.</remarks>
    private async Task<bool> SendAsync(Message message, string sender, IMailSession session)
    {
        var serverAnswers = true;
        try
        {
            if (message.Attempts > MaxAttempts)
                throw new MailNotSentException("no worker has survived sending it", isServerFault: false);
            await session.SendAsync(MailWriter.Of(message, sender, mail.Value.SenderAddress));
            message.SentAt = clock.GetCurrentInstant();
            message.LastError = null;
            LogSent(message.Id, message.Kind, message.Attempts);
        }
        catch (MailNotSentException fault)
        {
            serverAnswers = !fault.IsServerFault;
            // A server that is down says nothing about the message: it waits for as long as that takes.
            if (fault.IsServerFault)
                message.Attempts--;
            Postpone(message, fault.Message);
        }
        message.LeasedUntil = null;
        await db.SaveChangesAsync(CancellationToken.None);
        return serverAnswers;
    }

    private void Postpone(Message message, string reason)
    {
        var now = clock.GetCurrentInstant();
        message.LastError = reason;
        message.NextAttemptAt = now + Duration.FromMinutes(WaitMinutes[Math.Clamp(message.Attempts, 1, WaitMinutes.Length) - 1]);
        if (message.Attempts >= MaxAttempts)
        {
            message.DeadAt = now;
            LogGivenUp(message.Id, message.Kind, message.Attempts, reason);
        }
        else
        {
            LogPostponed(message.Id, message.Kind, message.Attempts, reason);
        }
    }

    [LoggerMessage(LogLevel.Information, "Sent message {MessageId} ({Kind}), attempt {Attempt}")]
    private partial void LogSent(Guid messageId, string kind, int attempt);

    [LoggerMessage(LogLevel.Warning, "Message {MessageId} ({Kind}) not sent, attempt {Attempt}: {Reason}")]
    private partial void LogPostponed(Guid messageId, string kind, int attempt, string reason);

    [LoggerMessage(LogLevel.Error, "Message {MessageId} ({Kind}) given up after attempt {Attempt}: {Reason}")]
    private partial void LogGivenUp(Guid messageId, string kind, int attempt, string reason);
}
