using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Hours;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tasks;

/// <summary>How long a task takes, as estimated and as the organization's own records correct it.</summary>
/// <param name="Estimate">Hours of one person, least and most, and where they come from.</param>
/// <param name="Pace">What its own records multiply estimates of the practice by; 1 without records.</param>
/// <param name="Recorded">Hours of one person that were recorded.</param>
public sealed record TaskTime(HoursEstimate Estimate, double Pace, double Recorded)
{
    /// <summary>The shortest rest of a task, hours of one person: common practice, no source.</summary>
    private const double LeastLeft = 1;

    /// <summary>What is left of it, hours of one person.</summary>
    public double Left => Math.Max(LeastLeft, Estimate.Middle * Pace - Recorded);

    public ValueRange Range => Estimate.PersonHours * Pace;
}

/// <summary>Estimates how long tasks take.</summary>
public sealed class TaskHours(WorkWindowsDb db)
{
    private const double HoursPerDay = 8;

    /// <param name="tasks">Tasks of the organization.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<IReadOnlyDictionary<Guid, TaskTime>> OfAsync(
        IReadOnlyCollection<PlannedTask> tasks, CancellationToken cancellation)
    {
        var ids = tasks.Select(task => task.Id).ToList();
        var recorded = await db.WorkRecords.Where(record => ids.Contains(record.TaskId)).GroupBy(record => record.TaskId)
            .Select(records => new { records.Key, Hours = records.Sum(record => record.PersonHours) })
            .ToDictionaryAsync(row => row.Key, row => (double)row.Hours, cancellation);
        var paces = await PacesAsync(cancellation);
        return tasks.ToDictionary(task => task.Id, task => new TaskTime(
            Estimate(task), paces.GetValueOrDefault(task.PracticeId, 1), recorded.GetValueOrDefault(task.Id)));
    }

    /// <summary>The consultant's own hours, else those of the practice, else a day of its crew.</summary>
    internal static HoursEstimate Estimate(PlannedTask task)
    {
        if (task is { HoursLow: { } low, HoursHigh: { } high })
            return new(new((double)low, (double)high), "the consultant's own estimate");
        var practice = PracticeCatalogue.Find(task.PracticeId)!;
        return task is { Quantity: { } quantity, QuantityUnit: { } unit }
            && PracticeHours.Of(practice, (double)quantity, unit) is { } known
            ? known
            : new(ValueRange.Of(HoursPerDay * task.CrewSize), "not known: a day of its crew is assumed");
    }

    /// <summary>How the finished tasks of each practice compare with their estimates.</summary>
    private async Task<Dictionary<string, double>> PacesAsync(CancellationToken cancellation)
    {
        var finished = await db.PlannedTasks.AsNoTracking().Where(task => task.CompletedOn != null)
            .Join(db.WorkRecords.GroupBy(record => record.TaskId)
                    .Select(records => new { records.Key, Hours = records.Sum(record => record.PersonHours) }),
                task => task.Id, records => records.Key, (task, records) => new { Task = task, records.Hours })
            .ToListAsync(cancellation);
        return finished.GroupBy(row => row.Task.PracticeId).ToDictionary(
            rows => rows.Key, rows => CrewPace.Of([.. rows.Select(row => (Estimate(row.Task).Middle, (double)row.Hours))]));
    }
}
