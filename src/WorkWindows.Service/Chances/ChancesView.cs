using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

/// <summary>A task's chances as the API tells them.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="TimeZone">The IANA zone whose days these are.</param>
/// <param name="Today">The day it is there.</param>
/// <param name="PastYears">
/// The years that the season is continued by, the newest first; none when there are too few.
/// </param>
/// <param name="Opens">The first workable day; null without past years, as is what follows.</param>
/// <param name="Closes">The last workable day before fourteen days or more without any.</param>
/// <param name="LeafOut">Leaf-out as the weather of the past years would bring it.</param>
/// <param name="WorkableDays">The workable days to be expected until the task closes.</param>
/// <param name="Days">Each day.</param>
public sealed record ChancesView(
    Guid TaskId, string TimeZone, LocalDate Today, IReadOnlyList<int> PastYears, DateSpread? Opens, DateSpread? Closes,
    DateSpread? LeafOut, double? WorkableDays, IReadOnlyList<ChancesView.DayPart> Days)
{
    /// <param name="Date">The day.</param>
    /// <param name="Chance">
    /// The chance that it is open or limited, 0 to 1; null when it is unknown in more than a tenth of the years.
    /// </param>
    /// <param name="Workable">In how many of the past years' seasons it is open or limited.</param>
    /// <param name="Unknown">In how many it is unknown.</param>
    public sealed record DayPart(LocalDate Date, double? Chance, int Workable, int Unknown);

    internal static ChancesView Of(TaskSummary task, TaskChances chances, LocalDate today)
    {
        var days = chances.Days;
        var isTold = chances.Years.Length > 0;
        return new(
            task.Id, task.Zone.Id, today, chances.Years,
            isTold ? chances.Opens : null, isTold ? chances.Closes : null, isTold ? chances.LeafOut : null,
            isTold && chances.WorkableDays is { } left ? Math.Round(left, 1) : null,
            isTold ? [.. Enumerable.Range(0, days.Count).Select(day => Part(chances, days[day]))] : []);
    }

    private static DayPart Part(TaskChances chances, LocalDate date)
    {
        var chance = chances[date];
        return new(date, chance.Share is { } share ? Math.Round(share, 3) : null, chance.Workable, chance.Unknown);
    }
}
