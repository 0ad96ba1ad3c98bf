using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Differences;

/// <summary>What becomes of a task from one plan to the next.</summary>
public enum PlanChange
{
    /// <summary>It was in nobody's days and is now.</summary>
    Added,

    /// <summary>It is in nobody's days any more.</summary>
    Dropped,

    /// <summary>The same crew does it on other days.</summary>
    Moved,

    /// <summary>Another crew does it on the same days.</summary>
    OtherCrew,

    /// <summary>Another crew does it on other days.</summary>
    MovedToOtherCrew,

    /// <summary>The same days, with other hours or people.</summary>
    Rearranged,
}

/// <summary>A task that differs.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Change">How.</param>
/// <param name="Before">Its days before, ascending.</param>
/// <param name="After">Its days now, ascending.</param>
/// <param name="CrewBefore">Its crew before; null where it had none.</param>
/// <param name="CrewAfter">Its crew now; null where it has none.</param>
public sealed record PlanDifference(
    string TaskId, PlanChange Change, ImmutableArray<LocalDate> Before, ImmutableArray<LocalDate> After,
    string? CrewBefore, string? CrewAfter)
{
    /// <summary>Days from its first day before to its first day now; 0 where it has none of the two.</summary>
    public int DaysLater => Before.IsEmpty || After.IsEmpty ? 0 : Period.DaysBetween(Before[0], After[0]);

    /// <summary>Days that are not kept.</summary>
    public IEnumerable<LocalDate> Left => Before.Except(After);

    /// <returns>The tasks that differ, by the first of their days, then by name; those that are as they were are left out.</returns>
    public static ImmutableArray<PlanDifference> Between(
        IReadOnlyCollection<Booking> before, IReadOnlyCollection<Booking> after)
    {
        var (old, now) = (before.ToLookup(booking => booking.TaskId), after.ToLookup(booking => booking.TaskId));
        return
        [
            .. old.Select(task => task.Key).Union(now.Select(task => task.Key)).Select(task => Of(task, [.. old[task]], [.. now[task]]))
                .OfType<PlanDifference>().OrderBy(one => one.Before.Concat(one.After).Min())
                .ThenBy(one => one.TaskId, StringComparer.Ordinal),
        ];
    }

    private static PlanDifference? Of(string task, IReadOnlyList<Booking> before, IReadOnlyList<Booking> after)
    {
        ImmutableArray<LocalDate> was = [.. before.Select(booking => booking.Day).Distinct().Order()];
        ImmutableArray<LocalDate> now = [.. after.Select(booking => booking.Day).Distinct().Order()];
        // A task is done by one crew, but for what is set by hand: the one with most of it counts.
        var (crewBefore, crewAfter) = (Crew(before), Crew(after));
        var (sameDays, sameCrew) = (was.SequenceEqual(now), crewBefore == crewAfter);
        PlanChange? change = (was.IsEmpty, now.IsEmpty, sameDays, sameCrew) switch
        {
            (true, false, _, _) => PlanChange.Added,
            (false, true, _, _) => PlanChange.Dropped,
            (_, _, true, true) => IsSame(before, after) ? null : PlanChange.Rearranged,
            (_, _, false, true) => PlanChange.Moved,
            (_, _, true, false) => PlanChange.OtherCrew,
            _ => PlanChange.MovedToOtherCrew,
        };
        return change is { } kind ? new(task, kind, was, now, crewBefore, crewAfter) : null;
    }

    private static bool IsSame(IReadOnlyList<Booking> before, IReadOnlyList<Booking> after) =>
        before.OrderBy(one => one.Day).ThenBy(one => one.CrewId, StringComparer.Ordinal).Zip(
            after.OrderBy(one => one.Day).ThenBy(one => one.CrewId, StringComparer.Ordinal)).All(pair =>
                pair.First.CrewId == pair.Second.CrewId
                && Math.Abs(pair.First.Hours - pair.Second.Hours) <= TaskProgress.Tolerance
                && pair.First.Members.ToHashSet().SetEquals(pair.Second.Members))
        && before.Count == after.Count;

    private static string? Crew(IEnumerable<Booking> bookings) => bookings.GroupBy(booking => booking.CrewId)
        .OrderByDescending(crew => crew.Sum(booking => booking.Hours)).ThenBy(crew => crew.Key, StringComparer.Ordinal)
        .FirstOrDefault()?.Key;
}
