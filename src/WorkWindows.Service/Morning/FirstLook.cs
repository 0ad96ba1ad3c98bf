using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Morning;

/// <summary>
/// Has work looked at that nobody has ever looked at, as after an update that tells more of it than the version before did:
/// pages would call it unknown until the next night.
/// </summary>
public sealed class FirstLook(WorkWindowsDb db, PromptLook look)
{
    /// <summary>Notes a look where it is needed; it begins within a minute.</summary>
    public async Task NoteAsync(CancellationToken cancellation)
    {
        if (!await db.PlannedTasks.AnyAsync(
                task => task.CompletedOn == null && !db.TaskOutlooks.Any(outlook => outlook.TaskId == task.Id), cancellation)
            || await db.DueLooks.AnyAsync(due => due.IsWhole, cancellation))
        {
            return;
        }
        look.Note();
        await db.SaveChangesAsync(cancellation);
    }
}
