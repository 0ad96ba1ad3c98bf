using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>What became of an organization's messages.</summary>
public sealed class MessageReader(WorkWindowsDb db)
{
    public const int MostMessages = 500;

    /// <param name="state">Where they stand.</param>
    /// <param name="since">Leaves out what was written before; null for none.</param>
    /// <param name="cancellation">Ends the query.</param>
    /// <returns>The newest first, <see cref="MostMessages"/> at most.</returns>
    public Task<List<MessageView>> ListAsync(MessageState state, Instant? since, CancellationToken cancellation) =>
        ViewsAsync(In(state).Where(message => since == null || message.CreatedAt >= since), cancellation);

    public async Task<MessageView?> FindAsync(Guid id, CancellationToken cancellation) =>
        (await ViewsAsync(db.Messages.Where(message => message.Id == id), cancellation)).SingleOrDefault();

    /// <returns>The messages, and the same by another way of those that went both ways.</returns>
    public async Task<List<MessageView>> WithTwinsAsync(
        IReadOnlyCollection<MessageView> messages, CancellationToken cancellation)
    {
        var seen = messages.Select(message => message.Id).ToHashSet();
        var keys = messages.SelectMany(message => new[] { message.About, message.About + Message.WebhookSuffix })
            .ToHashSet();
        var twins = await ViewsAsync(db.Messages.Where(message => keys.Contains(message.DedupeKey)), cancellation);
        return [.. messages, .. twins.Where(twin => !seen.Contains(twin.Id))];
    }

    public Task<int> CountAsync(MessageState state, CancellationToken cancellation) =>
        In(state).CountAsync(cancellation);

    private IQueryable<Message> In(MessageState state) => state switch
    {
        MessageState.Waiting => db.Messages.Where(message => message.DeadAt == null && message.SentAt == null),
        MessageState.Sent => db.Messages.Where(message => message.DeadAt == null && message.SentAt != null),
        MessageState.Dropped => db.Messages.Where(
            message => message.GivenUp == GivenUp.Superseded || message.GivenUp == GivenUp.TurnedOff),
        MessageState.GivenUp => db.Messages.Where(
            message => message.GivenUp == GivenUp.Failed || message.GivenUp == GivenUp.AddressBounces),
    };

    private async Task<List<MessageView>> ViewsAsync(IQueryable<Message> messages, CancellationToken cancellation)
    {
        var bounces = await BouncingAddresses.ReadAsync(db, cancellation);
        var rows = await messages.AsNoTracking().OrderByDescending(message => message.CreatedAt)
            .ThenByDescending(message => message.Id).Take(MostMessages)
            .Select(message => new
            {
                Message = message,
                Name = db.People.Where(person => person.Id == message.RecipientId)
                    .Select(person => person.DisplayName).SingleOrDefault(),
            })
            .ToListAsync(cancellation);
        return rows.ConvertAll(row => View(row.Message, row.Name, bounces.Of(row.Message.ToAddress)));
    }

    private static MessageView View(Message message, string? name, BounceView? bounce)
    {
        var state = StateOf(message);
        return new(
            message.Id, message.Kind, message.RecipientId, message.Channel, name ?? message.ToAddress,
            message.ToAddress, message.Subject, state, message.GivenUp, message.LastError, message.Attempts,
            message.CreatedAt, state == MessageState.Waiting ? message.NextAttemptAt : null, message.SentAt,
            message.DeadAt, bounce)
        {
            About = Message.AboutOf(message.DedupeKey),
        };
    }

    internal static MessageState StateOf(Message message) => message switch
    {
        { GivenUp: GivenUp.Superseded or GivenUp.TurnedOff } => MessageState.Dropped,
        { DeadAt: not null } => MessageState.GivenUp,
        { SentAt: not null } => MessageState.Sent,
        _ => MessageState.Waiting,
    };
}
