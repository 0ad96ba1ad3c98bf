using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Morning;

/// <summary>How many tasks may be done on a day, and of how many it is not known.</summary>
public sealed record DayCount(LocalDate Day, int Open, int Limited, int Unknown, int Closed)
{
    public int Workable => Open + Limited;
}

/// <summary>Days of work on a property that are other than they were said to be yesterday.</summary>
/// <param name="Tasks">The tasks, the first of them named.</param>
/// <param name="First">The first day.</param>
/// <param name="Last">The last one in a row.</param>
/// <param name="Was">What was said.</param>
/// <param name="Is">What is said now.</param>
public sealed record Overnight(IReadOnlyList<OutlookRow> Tasks, LocalDate First, LocalDate Last, DayState Was, DayState Is)
{
    public OutlookRow Task => Tasks[0];
}

/// <summary>The work of a property that may be done today.</summary>
public sealed record TodayOn(Guid PropertyId, string Property, string? Owner, IReadOnlyList<OutlookRow> Tasks);

/// <summary>A consultant's morning.</summary>
/// <param name="Today">The day it is.</param>
/// <param name="Summary">Today in a sentence.</param>
/// <param name="Days">Today and the coming days.</param>
/// <param name="Changed">What changed overnight, what is worse first.</param>
/// <param name="Closing">Work that may be done today and whose last day is near, by that day.</param>
/// <param name="Properties">Where work may be done today.</param>
/// <param name="Unseen">How many tasks nobody has looked at.</param>
/// <param name="Tasks">How many tasks are to be done.</param>
public sealed record MorningView(
    LocalDate Today, string Summary, IReadOnlyList<DayCount> Days, IReadOnlyList<Overnight> Changed,
    IReadOnlyList<OutlookRow> Closing, IReadOnlyList<TodayOn> Properties, int Unseen, int Tasks)
{
    /// <summary>Ahead of the end of a season it is said so many days: common practice, no source.</summary>
    public const int DaysClosing = 21;

    public static MorningView Of(IReadOnlyList<OutlookRow> rows, LocalDate today, Instant now)
    {
        var days = Enumerable.Range(0, TaskOutlook.Days).Select(today.PlusDays).Select(day => Count(rows, day, now)).ToList();
        var workable = rows.Where(row => row.MayBeDone(today, now)).ToList();
        return new(
            today, Say(days[0], days, rows.Count), days, [.. ChangedOf(rows, today, now)],
            [.. workable.Where(row => row.ClosesOn <= today.PlusDays(DaysClosing)).OrderBy(row => row.ClosesOn)],
            [.. workable.GroupBy(row => (row.PropertyId, row.Property, row.Owner))
                .Select(tasks => new TodayOn(tasks.Key.PropertyId, tasks.Key.Property, tasks.Key.Owner, [.. tasks]))],
            rows.Count(row => !(now - row.SeenAt <= TaskOutlook.LongestAge)), rows.Count);
    }

    private static DayCount Count(IReadOnlyList<OutlookRow> rows, LocalDate day, Instant now)
    {
        var counts = new int[4];
        foreach (var row in rows.Where(row => row.IsDue(day)))
            counts[(int)row.On(day, now)]++;
        return new(
            day, counts[(int)DayState.Open], counts[(int)DayState.Limited], counts[(int)DayState.Unknown],
            counts[(int)DayState.Closed]);
    }

    private static string Say(DayCount today, List<DayCount> days, int all)
    {
        if (all == 0)
            return "There is no work to plan yet.";
        var may = today.Workable == 0
            ? "No work may be done today"
            : $"{today.Workable} of {DayWords.Count(all, "task", "tasks")} may be done today"
                + (today.Limited > 0 ? $", {today.Limited} of them with limits" : "");
        var next = today.Workable == 0 && days.Find(day => day.Workable > 0) is { } later
            ? $". Next: {DayWords.Of(later.Day)}, {DayWords.Count(later.Workable, "task", "tasks")}"
            : "";
        var unknown = today.Unknown > 0
            ? $" For {today.Unknown} something is not known: do not start {(today.Unknown == 1 ? "it" : "them")}."
            : "";
        return $"{may}{next}.{unknown}";
    }

    /// <summary>
    /// Days that were to be worked and are not, or the other way round. What was not known yet is told of today and tomorrow
    /// alone: further ahead days become known every morning.
    /// </summary>
    private static IEnumerable<Overnight> ChangedOf(IReadOnlyList<OutlookRow> rows, LocalDate today, Instant now) => rows
        .Select(row => (Row: row, Change: FirstChange(row, today, now))).Where(one => one.Change is not null)
        .GroupBy(one => (one.Row.PropertyId, Change: one.Change!.Value))
        .Select(same => new Overnight(
            [.. same.Select(one => one.Row)], same.Key.Change.First, same.Key.Change.Last, same.Key.Change.Was,
            same.Key.Change.Is))
        .OrderBy(change => change.Is is DayState.Open or DayState.Limited).ThenBy(change => change.First)
        .ThenBy(change => change.Task.Property, StringComparer.OrdinalIgnoreCase);

    private static (LocalDate First, LocalDate Last, DayState Was, DayState Is)? FirstChange(
        OutlookRow row, LocalDate today, Instant now)
    {
        for (var index = 0; index < TaskOutlook.Days; index++)
        {
            var day = today.PlusDays(index);
            var (was, @is) = (row.Before(day), row.On(day, now));
            if (row.BeforeStates is null || !row.IsDue(day) || !Matters(was, @is, index))
                continue;
            var last = day;
            while (Period.DaysBetween(today, last) + 1 < TaskOutlook.Days
                && (row.Before(last.PlusDays(1)), row.On(last.PlusDays(1), now)) == (was, @is))
            {
                last = last.PlusDays(1);
            }
            return (day, last, was, @is);
        }
        return null;
    }

    private static bool Matters(DayState was, DayState @is, int daysAhead)
    {
        const int known = 2;
        if (was == @is || (was == DayState.Unknown && daysAhead >= known))
            return false;
        return @is == DayState.Unknown || IsWorkable(was) != IsWorkable(@is);

        static bool IsWorkable(DayState state) => state is DayState.Open or DayState.Limited;
    }
}
