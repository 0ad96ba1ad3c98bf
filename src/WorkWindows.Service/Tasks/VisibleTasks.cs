using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tasks;

/// <summary>
/// The tasks that the caller may see: a landowner those on their own land, everyone else the organization's.
/// </summary>
public sealed class VisibleTasks(WorkWindowsDb db, Caller caller)
{
    public IQueryable<PlannedTask> All => caller.Role == Role.Landowner
        ? db.PlannedTasks.Where(task => task.Parcel.Property.LandownerId != null
            && task.Parcel.Property.LandownerId == caller.PersonId)
        : db.PlannedTasks;
}
