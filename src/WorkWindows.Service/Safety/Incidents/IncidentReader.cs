using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>Shows incidents, the latest first.</summary>
public sealed class IncidentReader(WorkWindowsDb db, VisibleTasks visible)
{
    /// <returns>Null when the caller sees no such task.</returns>
    public async Task<IReadOnlyList<IncidentView>?> OfTaskAsync(Guid taskId, CancellationToken cancellation)
    {
        if (!await visible.All.AnyAsync(task => task.Id == taskId, cancellation))
            return null;
        var rows = await Ordered(db.Incidents.Where(row => row.TaskId == taskId)).ToListAsync(cancellation);
        return rows.ConvertAll(IncidentView.Of);
    }

    /// <summary>All of the organization, each with its task and place.</summary>
    public async Task<IReadOnlyList<PlacedIncident>> AllAsync(CancellationToken cancellation)
    {
        var incidents = await Ordered(db.Incidents).ToListAsync(cancellation);
        var tasks = await visible.All.Where(task => db.Incidents.Any(row => row.TaskId == task.Id))
            .Select(task => new
            {
                task.Id,
                task.Key,
                task.PracticeId,
                Parcel = task.Parcel.Name,
                Property = task.Parcel.Property.Name,
                task.Parcel.Property.TimeZone,
            })
            .ToDictionaryAsync(task => task.Id, cancellation);
        return incidents.ConvertAll(row =>
        {
            var task = tasks[row.TaskId];
            return new PlacedIncident(
                IncidentView.Of(row), task.Key, PracticeCatalogue.Find(task.PracticeId)?.Name ?? task.PracticeId,
                task.Property, task.Parcel, task.TimeZone);
        });
    }

    private static IQueryable<Incident> Ordered(IQueryable<Incident> rows) =>
        rows.AsNoTracking().OrderByDescending(row => row.HappenedAt).ThenByDescending(row => row.RecordedAt);
}

/// <param name="Incident">The entry.</param>
/// <param name="TaskKey">The organization's own name for the task.</param>
/// <param name="Practice">The kind of work.</param>
/// <param name="Property">Where.</param>
/// <param name="Parcel">Where on it.</param>
/// <param name="TimeZone">The property's zone.</param>
public sealed record PlacedIncident(
    IncidentView Incident, string TaskKey, string Practice, string Property, string Parcel, string TimeZone);
