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

/// <summary>Orders work by what it brings for an hour.</summary>
public static class Ranking
{
    /// <param name="tasks">What is to be done, its worth and its time.</param>
    public static IReadOnlyList<RankedTask> Of(IEnumerable<(Guid Id, string Title, double Points, TaskTime Time)> tasks)
    {
        var ordered = tasks.OrderByDescending(task => task.Points / task.Time.Left).ThenBy(task => task.Title, StringComparer.Ordinal)
            .ToList();
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
