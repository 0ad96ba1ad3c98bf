using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety;

/// <summary>
/// Finds days on which one person alone is planned for work that the law does not let anybody do alone.
/// </summary>
public sealed class PlannedCompany(WorkWindowsDb db, TaskEvaluator evaluator)
{
    /// <param name="tasks">Stored tasks.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>The law that stands against it, for each of the tasks whose scheduled day it forbids.</returns>
    public async Task<IReadOnlyDictionary<Guid, RuleVerdict>> ForbiddenAsync(
        IReadOnlyCollection<Guid> tasks, CancellationToken cancellation)
    {
        var alone = db.PlannedTasks.Where(task =>
            tasks.Contains(task.Id) && task.CrewSize == 1 && task.ScheduledOn != null && task.CompletedOn == null);
        var days = await alone.Select(task => task.ScheduledOn!.Value).Distinct().ToListAsync(cancellation);
        var forbidden = new Dictionary<Guid, RuleVerdict>();
        foreach (var day in days.Order())
        {
            var evaluated = await evaluator.EvaluateAsync(
                alone.Where(task => task.ScheduledOn == day), new(day, 1), cancellation);
            foreach (var (task, evaluation) in evaluated)
            {
                if (CompanyRules.Forbidding(Explanation.Of(evaluation, day)) is [var law, ..])
                    forbidden[task.Id] = law;
            }
        }
        return forbidden;
    }
}
