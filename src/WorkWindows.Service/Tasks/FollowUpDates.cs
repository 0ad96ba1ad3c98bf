using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tasks;

/// <summary>Moves the dates of work that follows other work in later years. The caller saves.</summary>
public sealed class FollowUpDates(WorkWindowsDb db)
{
    /// <summary>Sets first day and deadline of what follows a task from its completion; takes them off without one.</summary>
    public async Task SetAsync(PlannedTask task, CancellationToken cancellation)
    {
        var followers = await db.PlannedTasks.Where(row => row.FollowsId == task.Id && row.CompletedOn == null)
            .ToListAsync(cancellation);
        var rules = await db.FollowUpsAsync(cancellation);
        foreach (var follower in followers)
        {
            var rule = rules.FirstOrDefault(
                one => one.After.Id == task.PracticeId && one.Practice.Id == follower.PracticeId);
            if (rule is null)
                continue;
            var due = task.CompletedOn is { } done ? rule.Due(done) : ((NodaTime.LocalDate From, NodaTime.LocalDate To)?)null;
            (follower.NotBefore, follower.Deadline) = (due?.From, due?.To);
        }
    }
}
