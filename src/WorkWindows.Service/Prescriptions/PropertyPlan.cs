using NodaTime;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

/// <summary>How a step of a parcel's years stands.</summary>
public enum StepState
{
    Done,
    Planned,

    /// <summary>Work that is done asks for it, and nobody has planned it.</summary>
    Due,
}

/// <summary>A step of a parcel's years.</summary>
/// <param name="TaskId">The task; null where it is not planned.</param>
/// <param name="Practice">What is done.</param>
/// <param name="State">How it stands.</param>
/// <param name="From">The first day of its time; null where it may be any.</param>
/// <param name="To">The last day of it; null where it may be any.</param>
public sealed record Step(Guid? TaskId, string Practice, StepState State, LocalDate? From, LocalDate? To)
{
    /// <summary>The year that it is shown in: of the day it was done, is scheduled, or may first be done.</summary>
    public required int Year { get; init; }

    /// <summary>How many steps of the parcel come before it, one after the other.</summary>
    public required int Place { get; init; }

    /// <summary>Whether its time is reckoned from work that is not done itself.</summary>
    public bool IsExpected { get; init; }
}

/// <summary>A parcel's years.</summary>
public sealed record ParcelYears(Guid Id, string Name, IReadOnlyList<Step> Steps, IReadOnlyList<string> Problems);

/// <summary>A task that is to be done, in the order of what it brings for an hour.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Title">The work and its parcel.</param>
/// <param name="Points">What it is worth.</param>
/// <param name="Time">How long it takes.</param>
/// <param name="PointsShare">The share of all points that it brings together with those above it, 0 to 1.</param>
/// <param name="HoursShare">The share of all hours that it takes together with those above it.</param>
public sealed record RankedTask(
    Guid TaskId, string Title, double Points, TaskTime Time, double PointsShare, double HoursShare)
{
    public double PointsPerHour => Points / Time.Left;
}

/// <summary>Work that may be done this season.</summary>
/// <param name="Id">The task.</param>
/// <param name="Title">The work and its parcel.</param>
/// <param name="Points">What it is worth.</param>
/// <param name="Time">How long it takes.</param>
/// <param name="After">What must be done first.</param>
public sealed record Rankable(Guid Id, string Title, double Points, TaskTime Time, IReadOnlyList<Guid> After);

/// <summary>Orders work by what it brings for an hour.</summary>
public static class Ranking
{
    /// <summary>
    /// Together with what must be done first: again and again the work comes next that brings most for an hour with all that
    /// it waits for, so that the order can be followed.
    /// </summary>
    public static IReadOnlyList<RankedTask> Of(IReadOnlyList<Rankable> tasks)
    {
        var ordered = InOrder(tasks);
        var (allPoints, allHours) = (ordered.Sum(task => task.Points), ordered.Sum(task => task.Time.Left));
        var (points, hours) = (0.0, 0.0);
        return
        [
            .. ordered.Select(task =>
            {
                points += task.Points;
                hours += task.Time.Left;
                return new RankedTask(
                    task.Id, task.Title, task.Points, task.Time, allPoints > 0 ? points / allPoints : 0, hours / allHours);
            }),
        ];
    }

    private static List<Rankable> InOrder(IReadOnlyList<Rankable> tasks)
    {
        var left = tasks.ToDictionary(task => task.Id);
        var ordered = new List<Rankable>();
        while (left.Count > 0)
        {
            var next = left.Values.Select(Chain).OrderByDescending(chain => chain.Sum(task => task.Points) / chain.Sum(task => task.Time.Left))
                .ThenBy(chain => chain.Count).ThenBy(chain => chain[^1].Title, StringComparer.Ordinal).First();
            ordered.AddRange(next);
            foreach (var task in next)
                left.Remove(task.Id);
        }
        return ordered;

        // What it waits for first, itself last.
        List<Rankable> Chain(Rankable task)
        {
            var (chain, seen) = (new List<Rankable>(), new HashSet<Guid>());
            Add(task);
            return chain;

            void Add(Rankable one)
            {
                if (!seen.Add(one.Id))
                    return;
                foreach (var first in one.After.Where(left.ContainsKey))
                    Add(left[first]);
                chain.Add(one);
            }
        }
    }

    /// <summary>The share of all points that the first fifth of the hours brings; a task in part counts in part.</summary>
    public static double PointsOfFirstFifth(IReadOnlyList<RankedTask> ranked)
    {
        const double Fifth = 0.2;
        var before = (Points: 0.0, Hours: 0.0);
        foreach (var task in ranked)
        {
            if (task.HoursShare >= Fifth)
            {
                var part = (Fifth - before.Hours) / (task.HoursShare - before.Hours);
                return before.Points + part * (task.PointsShare - before.Points);
            }
            before = (task.PointsShare, task.HoursShare);
        }
        return before.Points;
    }
}
