using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>Puts checklists together, and says which tasks are released.</summary>
public sealed class ChecklistReader(WorkWindowsDb db, WindowHandler windows, IClock clock)
{
    private const int MostDaysAway = 366;

    /// <param name="taskId">The task.</param>
    /// <param name="day">The day in the property's zone; null for today.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>Null when the caller sees no such task, or the day is more than a year away.</returns>
    public async Task<DayChecklist?> ReadAsync(Guid taskId, LocalDate? day, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(taskId, cancellation) is not { } today)
            return null;
        var asked = day ?? today;
        if (Math.Abs(Period.DaysBetween(today, asked)) > MostDaysAway
            || await windows.EvaluateAsync(taskId, new DaySpan(asked, 1), cancellation) is not { } found)
        {
            return null;
        }
        return await ComposeAsync(found, asked, today, cancellation);
    }

    /// <param name="found">A task that the caller may see, evaluated over the day.</param>
    /// <param name="day">The day in the property's zone.</param>
    /// <param name="today">The day that it is there.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<DayChecklist> ComposeAsync(
        EvaluatedTask found, LocalDate day, LocalDate today, CancellationToken cancellation)
    {
        var explanation = Explanation.Of(found.Evaluation, day);
        var checklist = SafetyChecklist.For(SafetyScene.Of(found.Evaluation, day));
        var lead = Name(await LeadsAsync([found.Task], day, cancellation), found.Task, day);
        var signed = await SignedVersion.OfAsync(db, day, day, cancellation);
        return new(
            found.Task, lead, day, today, clock.GetCurrentInstant(), found.Evaluation, explanation, checklist,
            Release.Of(found.Task, lead, explanation, today, checklist.Version, signed[(found.Task.Id, day)]));
    }

    /// <param name="tasks">Tasks that the caller may see, evaluated over <paramref name="day"/>.</param>
    /// <param name="day">Today.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>Of each task that is workable on the day, whether it is released.</returns>
    public async Task<IReadOnlyDictionary<Guid, Release>> ReleasesAsync(
        IEnumerable<EvaluatedTask> tasks, LocalDate day, CancellationToken cancellation)
    {
        var workable = tasks.Where(task => task.Evaluation[day] is DayState.Open or DayState.Limited).ToList();
        var leads = await LeadsAsync([.. workable.Select(task => task.Task)], day, cancellation);
        var signed = await SignedVersion.OfAsync(db, day, day, cancellation);
        return workable.ToDictionary(task => task.Task.Id, task => Release.Of(
            task.Task, Name(leads, task.Task, day), Explanation.Of(task.Evaluation, day), day,
            SafetyChecklist.For(SafetyScene.Of(task.Evaluation, day)).Version, signed[(task.Task.Id, day)]));
    }

    /// <returns>The signatures of a task for a day, in the order in which they were received.</returns>
    public Task<List<ChecklistSignature>> SignaturesAsync(Guid taskId, LocalDate day, CancellationToken cancellation) =>
        db.ChecklistSignatures.AsNoTracking().Where(row => row.TaskId == taskId && row.Day == day)
            .OrderBy(row => row.ReceivedAt).ThenBy(row => row.Id).ToListAsync(cancellation);

    private async Task<Dictionary<Guid, string>> LeadsAsync(
        IReadOnlyList<TaskSummary> tasks, LocalDate day, CancellationToken cancellation)
    {
        var ids = tasks.Select(task => task.LeadOn(day)).OfType<Guid>().Distinct().ToList();
        return await db.People.Where(person => ids.Contains(person.Id))
            .ToDictionaryAsync(person => person.Id, person => person.DisplayName, cancellation);
    }

    private static string? Name(Dictionary<Guid, string> leads, TaskSummary task, LocalDate day) =>
        task.LeadOn(day) is { } lead ? leads.GetValueOrDefault(lead) : null;
}
