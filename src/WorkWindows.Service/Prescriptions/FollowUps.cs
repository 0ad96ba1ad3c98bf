using WorkWindows.Engine.Practices;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

/// <summary>Which work of a parcel answers what other work asks for.</summary>
internal static class FollowUps
{
    /// <returns>The task that follows another by a rule, planned or done; null where nobody has planned it.</returns>
    public static PlannedTask? Answer(FollowUp rule, PlannedTask before, IEnumerable<PlannedTask> tasks) =>
        tasks.FirstOrDefault(task => task.PracticeId == rule.Practice.Id && task.Id != before.Id
            && (task.FollowsId == before.Id
                || (task.FollowsId is null && before.CompletedOn is { } done
                    && (task.CompletedOn is null || task.CompletedOn > done))));
}
