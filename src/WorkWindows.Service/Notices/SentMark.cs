using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Writes down that a message was taken over: the one thing of which only the worker knows.</summary>
public sealed partial class SentMark(WorkWindowsDb db, IClock clock, ILogger<SentMark> logger)
{
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(200);

    /// <summary>
    /// Tries on fresh connections for as long as the lease lasts: a database that is away for a moment must not have
    /// the reader get the message twice.
    /// </summary>
    /// <param name="message">A tracked row that is leased, just handed over.</param>
    /// <exception cref="Exception">The database was away until the lease ended; the message goes out again.</exception>
    public async Task WriteAsync(Message message)
    {
        var sentAt = clock.GetCurrentInstant();
        while (true)
        {
            try
            {
                await WriteAsync(message, sentAt);
                LogSent(message.Id, message.Kind, message.Attempts);
                return;
            }
            catch (Exception) when (clock.GetCurrentInstant() < message.LeasedUntil)
            {
                await Task.Delay(BetweenTries);
            }
            catch (Exception fault)
            {
                LogUnmarked(fault, message.Id, message.Kind, message.Attempts);
                throw;
            }
        }
    }

    private async Task WriteAsync(Message message, Instant sentAt)
    {
        if (db.Database.GetDbConnection().State != System.Data.ConnectionState.Open)
        {
            await db.Database.CloseConnectionAsync();
            await db.Database.OpenConnectionAsync();
        }
        var (address, lease) = (message.ToAddress, message.LeasedUntil);
        var marked = await db.Messages.Where(row => row.Id == message.Id && row.LeasedUntil == lease)
            .ExecuteUpdateAsync(row => row
                .SetProperty(one => one.SentAt, sentAt)
                .SetProperty(one => one.LeasedUntil, (Instant?)null)
                .SetProperty(one => one.LastError, (string?)null)
                .SetProperty(one => one.ToAddress, address));
        if (marked > 0)
            return;
        // Another worker has it, or somebody had it sent anew: what is sent is sent all the same.
        await db.Messages.Where(row => row.Id == message.Id && row.SentAt == null)
            .ExecuteUpdateAsync(row => row.SetProperty(one => one.SentAt, sentAt));
        LogTakenOver(message.Id, message.Kind, message.Attempts);
    }

    [LoggerMessage(LogLevel.Information, "Sent message {MessageId} ({Kind}), attempt {Attempt}")]
    private partial void LogSent(Guid messageId, string kind, int attempt);

    [LoggerMessage(
        LogLevel.Error, "Message {MessageId} ({Kind}) sent but not marked, so it goes out again, attempt {Attempt}")]
    private partial void LogUnmarked(Exception fault, Guid messageId, string kind, int attempt);

    [LoggerMessage(
        LogLevel.Warning, "Message {MessageId} ({Kind}) sent after its lease, so it may go out again, attempt {Attempt}")]
    private partial void LogTakenOver(Guid messageId, string kind, int attempt);
}
