using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

/// <summary>What work asks for later, and which work of a parcel answers it.</summary>
internal static class FollowUps
{
    /// <summary>What practices ask for, in the years of the organization.</summary>
    public static async Task<ImmutableArray<FollowUp>> FollowUpsAsync(this WorkWindowsDb db, CancellationToken cancellation) =>
        FollowUp.With((await db.PlanningSettings.AsNoTracking().SingleOrDefaultAsync(cancellation))?.FollowUpYears ?? new());

    /// <returns>The task that follows another by a rule, planned or done; null where nobody has planned it.</returns>
    public static PlannedTask? Answer(FollowUp rule, PlannedTask before, IEnumerable<PlannedTask> tasks) =>
        tasks.FirstOrDefault(task => task.PracticeId == rule.Practice.Id && task.Id != before.Id
            && (task.FollowsId == before.Id
                || (task.FollowsId is null && before.CompletedOn is { } done
                    && (task.CompletedOn is null || task.CompletedOn > done))));
}
