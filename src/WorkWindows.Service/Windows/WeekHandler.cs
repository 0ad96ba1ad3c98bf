using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

/// <summary>Evaluates every task that is still to be done over the next days.</summary>
public sealed class WeekHandler(WorkWindowsDb db, VisibleTasks visible, TaskEvaluator evaluator, IClock clock)
{
    public const int Days = 10;

    /// <returns>The day it is in the organization's time zone.</returns>
    public async Task<LocalDate> TodayAsync(CancellationToken cancellation)
    {
        var zone = await db.Organizations.Select(organization => organization.TimeZone).SingleAsync(cancellation);
        return clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }

    /// <returns>In the order of property, parcel and task key.</returns>
    public Task<IReadOnlyList<EvaluatedTask>> EvaluateAsync(LocalDate from, CancellationToken cancellation) =>
        evaluator.EvaluateAsync(
            visible.All.Where(task => task.CompletedOn == null), new DaySpan(from, Days), cancellation);
}
