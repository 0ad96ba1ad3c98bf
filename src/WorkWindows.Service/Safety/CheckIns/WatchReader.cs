using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>Shows watches of tasks that the caller may see.</summary>
public sealed class WatchReader(WorkWindowsDb db, WatchStore store, VisibleTasks visible, IOptions<MailOptions> mail)
{
    private const int MostWatches = 100;

    private IQueryable<CrewWatch> Visible =>
        store.All.Where(watch => visible.All.Any(task => task.Id == watch.TaskId));

    /// <returns>The newest watches of a task, the newest first; null when the caller sees no such task.</returns>
    public async Task<IReadOnlyList<WatchView>?> ListAsync(Guid taskId, CancellationToken cancellation) =>
        await visible.All.AnyAsync(task => task.Id == taskId, cancellation)
            ? await OfAsync(taskId, cancellation)
            : null;

    /// <returns>The newest watches of a task that the caller is known to see, the newest first.</returns>
    public async Task<IReadOnlyList<WatchView>> OfAsync(Guid taskId, CancellationToken cancellation) =>
        await ViewAsync(Visible.Where(watch => watch.TaskId == taskId), cancellation);

    /// <returns>Null when there is no such watch.</returns>
    public async Task<WatchView?> FindAsync(Guid watchId, CancellationToken cancellation) =>
        (await ViewAsync(Visible.Where(watch => watch.Id == watchId), cancellation)).SingleOrDefault();

    /// <returns>The watch of a task that is on, or null.</returns>
    public async Task<WatchView?> OpenAsync(Guid taskId, CancellationToken cancellation) =>
        (await ViewAsync(Visible.Where(watch => watch.TaskId == taskId && watch.EndedAt == null), cancellation))
        .SingleOrDefault();

    private async Task<List<WatchView>> ViewAsync(IQueryable<CrewWatch> watches, CancellationToken cancellation)
    {
        var rows = await watches.OrderByDescending(watch => watch.StartedAt).ThenByDescending(watch => watch.Id)
            .Take(MostWatches).ToListAsync(cancellation);
        var keys = rows.SelectMany(watch => watch.Missed).SelectMany(missed => missed.Calls)
            .Select(call => call.MessageKey).ToList();
        var mails = keys.Count == 0 ? [] : await db.Messages.AsNoTracking().Where(message => keys.Contains(message.DedupeKey))
            .Select(message => new CallMail(
                message.DedupeKey, message.SentAt,
                message.GivenUp == GivenUp.Failed || message.GivenUp == GivenUp.AddressBounces))
            .ToDictionaryAsync(message => message.Key, cancellation);
        return rows.ConvertAll(watch => WatchView.Of(watch, mails, mail.Value));
    }
}
