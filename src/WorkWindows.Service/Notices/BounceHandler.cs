using Hangfire;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Takes reports of mails that were taken over and came back later.</summary>
public sealed class BounceHandler(
    WorkWindowsDb db, DeadLetters dead, MessageReader reader, IBackgroundJobClient jobs, Caller caller)
{
    /// <summary>
    /// A failed mail is given up, and its address marked where there is no such mailbox. A report that comes twice, or
    /// that says that a mail is late or was passed on, changes nothing.
    /// </summary>
    internal async Task<Change<MessageView>> TakeAsync(DeliveryReport report, CancellationToken cancellation)
    {
        var message = await db.Messages.Where(row => report.MessageIds.Contains(row.MessageId))
            .OrderByDescending(row => row.CreatedAt).FirstOrDefaultAsync(cancellation);
        if (message is null)
        {
            return Change.Unprocessable<MessageView>(
                "No message of the organization is named by the report. It names: "
                + $"{string.Join(", ", report.MessageIds)}.");
        }
        if (report.Failure is { } status && message.DeadAt is null)
        {
            var reason = $"came back, status {status}";
            if (MailboxStatus.IsGone(status))
                await dead.AddressGoneAsync(message, status, reason);
            else
                await dead.GiveUpAsync(message, GivenUp.Failed, reason);
            jobs.Enqueue<OutboxJob>(job => job.SendAsync(caller.OrganizationId, CancellationToken.None));
        }
        return Change.Done((await reader.FindAsync(message.Id, cancellation))!);
    }
}
