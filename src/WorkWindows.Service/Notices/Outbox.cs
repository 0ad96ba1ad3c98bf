using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Sends the messages of one organization that are due, each once.</summary>
public sealed partial class Outbox(
    WorkWindowsDb db, CurrentOrganization current, IMailTransport transport, Delivery delivery, LastLook lastLook,
    SentMark mark, DeadLetters dead, IClock clock, ILogger<Outbox> logger)
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
        // One connection for the whole run: opening one costs as much as marking a message.
        await db.Database.OpenConnectionAsync(cancellation);
        var sender = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        await using var session = transport.Open();
        while (!cancellation.IsCancellationRequested && await LeaseAsync(cancellation) is { } message)
        {
            if (!await SendAsync(message, sender, session))
                return;
            db.ChangeTracker.Clear();
        }
    }

    /// <summary>Counts the attempt, so that a message that kills its workers is given up some day.</summary>
    private async Task<Message?> LeaseAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // Not waited for on the disk, which takes longer than all else: a server that loses a lease as it crashes has
        // also cut off the worker that held it.
        await db.Database.ExecuteSqlAsync($"set local synchronous_commit = off", cancellation);
        var leased = await db.Messages.FromSql($"""
            update messages set attempts = attempts + 1, leased_until = {now + Lease}
            where id = (
              select id from messages
              where sent_at is null and dead_at is null and next_attempt_at <= {now}
                and (leased_until is null or leased_until <= {now})
              order by urgency, next_attempt_at, created_at limit 1
              for update skip locked)
            returning *
            """).ToListAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return leased.SingleOrDefault();
    }

    /// <returns>Whether the next message has a chance.</returns>
    /// <remarks>What has happened to the mail is written down even while the service stops.</remarks>
    private async Task<bool> SendAsync(Message message, Organization sender, IMailSession session)
    {
        if (message.Attempts > MaxAttempts)
        {
            await GiveUpAsync(message, "no worker has survived sending it");
            return true;
        }
        if (await lastLook.HindranceAsync(message, sender, clock.GetCurrentInstant()) is { } hindrance)
        {
            await HinderAsync(message, hindrance);
            return true;
        }
        // It stood still for so long that it could not finish before the message is another worker's.
        if (clock.GetCurrentInstant() + delivery.Longest(message) >= message.LeasedUntil)
            return true;
        try
        {
            if (await delivery.SendAsync(message, sender, session) is { } gone)
            {
                await dead.GiveUpAsync(message, GivenUp.TurnedOff, gone);
                return true;
            }
        }
        catch (MailNotSentException fault)
        {
            await PostponeAsync(message, fault);
            return !fault.IsServerFault;
        }
        await mark.WriteAsync(message);
        return true;
    }

    private async Task HinderAsync(Message message, Hindrance hindrance)
    {
        if (hindrance.Why is { } why)
        {
            await dead.GiveUpAsync(message, why, hindrance.Reason);
            return;
        }
        // It was not tried.
        message.Attempts--;
        message.NextAttemptAt = hindrance.Until!.Value;
        await ReleaseAsync(message);
    }

    private async Task PostponeAsync(Message message, MailNotSentException fault)
    {
        if (fault.MailboxGone is { } code)
        {
            await dead.AddressGoneAsync(message, code, fault.Message);
            return;
        }
        // A server that is down says nothing about the message: it waits for as long as that takes. One that has been
        // given the message may have kept it: whoever gets it again and again must not get it for ever.
        if (fault is { IsServerFault: true, MayHaveArrived: false })
            message.Attempts--;
        message.NextAttemptAt = clock.GetCurrentInstant()
            + Duration.FromMinutes(WaitMinutes[Math.Clamp(message.Attempts, 1, WaitMinutes.Length) - 1]);
        if (message.Attempts >= MaxAttempts)
        {
            await GiveUpAsync(message, fault.Message);
            return;
        }
        message.LastError = fault.Message;
        if (fault.MayHaveArrived)
            LogUncertain(message.Id, message.Kind, message.Attempts, fault.Message);
        else
            LogPostponed(message.Id, message.Kind, message.Attempts, fault.Message);
        await ReleaseAsync(message);
    }

    private Task GiveUpAsync(Message message, string reason) => dead.GiveUpAsync(message, GivenUp.Failed, reason);

    /// <summary>Lets it wait; a message that is another worker's by now is left to that one.</summary>
    private async Task ReleaseAsync(Message message)
    {
        await using var transaction = await db.Database.BeginTransactionAsync();
        if (!await MessageLease.EndAsync(db, message))
            return;
        await db.SaveChangesAsync();
        await transaction.CommitAsync();
    }

    [LoggerMessage(
        LogLevel.Warning, "Message {MessageId} ({Kind}) may have arrived and goes out again, attempt {Attempt}: {Reason}")]
    private partial void LogUncertain(Guid messageId, string kind, int attempt, string reason);

    [LoggerMessage(LogLevel.Warning, "Message {MessageId} ({Kind}) not sent, attempt {Attempt}: {Reason}")]
    private partial void LogPostponed(Guid messageId, string kind, int attempt, string reason);
}
