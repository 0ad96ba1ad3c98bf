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
/// <param name="Done">What they did, hours at the pace that is usual: a quicker crew does more in an hour.</param>
public sealed record TaskTime(HoursEstimate Estimate, double Pace, double Recorded, double Done)
{
    /// <summary>The shortest rest of a task, hours of one person: common practice, no source.</summary>
    private const double LeastLeft = 1;

    /// <summary>What is left of it, hours of one person at the pace that is usual.</summary>
    public double Left => LeftWith(0);

    /// <summary>The same where some of what was recorded is still counted as work to come.</summary>
    /// <param name="hours">So much of <see cref="Done"/>.</param>
    public double LeftWith(double hours) => Math.Max(LeastLeft, Estimate.Middle * Pace - Done + hours);

    public ValueRange Range => Estimate.PersonHours * Pace;
}

/// <summary>Estimates how long tasks take.</summary>
public sealed class TaskHours(WorkWindowsDb db)
{
    private const double HoursPerDay = 8;

    /// <param name="tasks">Tasks of the organization.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<IReadOnlyDictionary<Guid, TaskTime>> OfAsync(
        IReadOnlyCollection<PlannedTask> tasks, CancellationToken cancellation) =>
        await OfAsync(tasks, await PacesAsync(cancellation), cancellation);

    /// <param name="tasks">Tasks of the organization.</param>
    /// <param name="paces">Its paces.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<IReadOnlyDictionary<Guid, TaskTime>> OfAsync(
        IReadOnlyCollection<PlannedTask> tasks, Paces paces, CancellationToken cancellation)
    {
        var ids = tasks.Select(task => task.Id).ToList();
        var recorded = (await db.WorkRecords.Where(record => ids.Contains(record.TaskId))
                .GroupBy(record => new { record.TaskId, record.CrewId })
                .Select(records => new { records.Key.TaskId, records.Key.CrewId, Hours = records.Sum(record => record.PersonHours) })
                .ToListAsync(cancellation))
            .ToLookup(row => row.TaskId, row => (row.CrewId, Hours: (double)row.Hours));
        return tasks.ToDictionary(task => task.Id, task => new TaskTime(
            Estimate(task), paces.Usual(task.PracticeId), recorded[task.Id].Sum(part => part.Hours),
            recorded[task.Id].Sum(part => part.Hours / paces.Of(part.CrewId, task.PracticeId))));
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

    /// <summary>How the finished tasks compare with their estimates, of all crews and of each.</summary>
    public async Task<Paces> PacesAsync(CancellationToken cancellation)
    {
        var finished = await db.PlannedTasks.AsNoTracking().Where(task => task.CompletedOn != null)
            .Join(db.WorkRecords.GroupBy(record => new { record.TaskId, record.CrewId })
                    .Select(records => new { records.Key.TaskId, records.Key.CrewId, Hours = records.Sum(record => record.PersonHours) })
                    .Where(row => row.Hours > 0),
                task => task.Id, row => row.TaskId, (task, row) => new { Task = task, row.CrewId, row.Hours })
            .ToListAsync(cancellation);
        return new([.. finished.GroupBy(row => row.Task.Id).Select(rows => new FinishedJob(
            rows.First().Task.PracticeId, rows.Count() == 1 ? rows.First().CrewId : null, Estimate(rows.First().Task).Middle,
            (double)rows.Sum(row => row.Hours)))]);
    }
}
