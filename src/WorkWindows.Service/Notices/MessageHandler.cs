using Hangfire;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>What consultants do about messages that reached nobody.</summary>
public sealed class MessageHandler(
    WorkWindowsDb db, MessageReader reader, AuditLog audit, IBackgroundJobClient jobs, Caller caller, IClock clock)
{
    private sealed record Trail(string Kind, Guid? RecipientId, MessageState State, string? Reason, int Attempts)
    {
        public static Trail Of(Message message) => new(
            message.Kind, message.RecipientId, MessageReader.StateOf(message), message.LastError, message.Attempts);
    }

    private sealed record BounceTrail(string Code, Instant BouncedAt);

    /// <summary>
    /// Has a message that was given up wait in the outbox again: the same row under the same Message-ID, to the address
    /// that the person has now. One that waits or was sent stays as it is.
    /// </summary>
    public async Task<Change<MessageView>> ResendAsync(Guid id, CancellationToken cancellation)
    {
        await using (var transaction = await db.Database.BeginTransactionAsync(cancellation))
        {
            var message = await db.Messages.FromSql($"select * from messages where id = {id} for update")
                .SingleOrDefaultAsync(cancellation);
            if (message is null)
                return Change.NotFound<MessageView>();
            if (message.GivenUp is GivenUp.Superseded or GivenUp.TurnedOff)
            {
                return Change.Conflict<MessageView>(
                    $"It is not needed any more. {DeliveryWords.Of(message.LastError!)}");
            }
            if (message.IsReplaced)
                return Change.Conflict<MessageView>("It is not needed any more: its days were taken back.");
            if (message.DeadAt is not null)
            {
                var address = await AddressAsync(message, cancellation);
                if (await BounceAsync(address, cancellation) is { } bounce)
                {
                    return Change.Conflict<MessageView>(
                        $"There is no mailbox {address} (status {bounce.Code}). Correct the person's mail address, or "
                        + "say first that it works again.");
                }
                var before = Trail.Of(message);
                message.Revive(clock.GetCurrentInstant(), address);
                await audit.AddAsync(AuditKind.Message, id, before, Trail.Of(message), cancellation);
                await db.SaveChangesAsync(cancellation);
                await transaction.CommitAsync(cancellation);
                jobs.Enqueue<OutboxJob>(job => job.SendAsync(caller.OrganizationId, CancellationToken.None));
            }
        }
        return Change.Done((await reader.FindAsync(id, cancellation))!);
    }

    /// <summary>Somebody says that the address works again: mails go out to it from now on.</summary>
    public async Task<Change<BounceView>> ClearAsync(Guid bounceId, CancellationToken cancellation)
    {
        var bounce = await db.BouncingAddresses.SingleOrDefaultAsync(row => row.Id == bounceId, cancellation);
        if (bounce is null)
            return Change.NotFound<BounceView>();
        db.Remove(bounce);
        await audit.AddAsync(
            AuditKind.BouncingAddress, bounceId, new BounceTrail(bounce.Code, bounce.BouncedAt), null, cancellation);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(new BounceView(bounce.Id, bounce.Code, bounce.BouncedAt));
    }

    private async Task<string> AddressAsync(Message message, CancellationToken cancellation)
    {
        var person = message.RecipientId;
        var current = message.Channel == NoticeChannels.Webhook
            ? db.NoticeSettings.Where(row => row.PersonId == person).Select(row => row.WebhookAddress)
            : db.People.Where(row => row.Id == person).Select(row => row.Email);
        return await current.SingleOrDefaultAsync(cancellation) ?? message.ToAddress;
    }

    private Task<BouncingAddress?> BounceAsync(string address, CancellationToken cancellation)
    {
        var normalized = BouncingAddress.Normalize(address);
        return db.BouncingAddresses.SingleOrDefaultAsync(bounce => bounce.Address == normalized, cancellation);
    }
}
