using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>A worker's hold on a message. One that it has lost lets it change nothing any more.</summary>
internal static class MessageLease
{
    /// <param name="db">In a transaction, so that the row stays as it is until that ends.</param>
    /// <param name="message">A tracked row, with the lease under which it was read.</param>
    /// <returns>False when the message is another worker's by now, or waits anew.</returns>
    public static async Task<bool> EndAsync(WorkWindowsDb db, Message message)
    {
        var ended = await db.Messages
            .Where(row => row.Id == message.Id && row.LeasedUntil == message.LeasedUntil)
            .ExecuteUpdateAsync(row => row.SetProperty(one => one.LeasedUntil, (NodaTime.Instant?)null));
        if (ended == 0)
            return false;
        message.LeasedUntil = null;
        return true;
    }
}
