using System.Collections.Immutable;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Crews;

namespace WorkWindows.Planning.Simulation;

/// <summary>A season as far as it has been played.</summary>
internal sealed class PlayedSeason(PlanCase plan, ImmutableArray<ImmutableArray<bool>> workable)
{
    private const double MinutesPerHour = 60;

    private readonly Dictionary<string, double> left = plan.Tasks.ToDictionary(task => task.Id, task => task.Hours);
    private int crewDays;
    private double travelMinutes;

    public PlanCase Plan => plan;

    public SeasonResult Result => new(
        plan.Tasks.Where(task => IsDone(task.Id)).Sum(task => task.Benefit), plan.Tasks.Count(task => IsDone(task.Id)), crewDays,
        travelMinutes / MinutesPerHour);

    public bool IsDone(string task) => left[task] <= TaskProgress.Tolerance;

    public bool IsWorkable(string task, int day) => workable[plan.Tasks.IndexOf(plan.Tasks.First(one => one.Id == task))][day];

    public void Work(IReadOnlyList<Booking> bookings)
    {
        foreach (var booking in bookings)
            left[booking.TaskId] -= TaskProgress.Done(plan, plan.Tasks.First(task => task.Id == booking.TaskId), [booking]);
        travelMinutes += CrewTours.TravelMinutes(plan, bookings);
        crewDays += bookings.Select(booking => booking.CrewId).Distinct().Count();
    }

    /// <summary>What is left to be done, from a day on which it is known what can be worked.</summary>
    /// <param name="today">The day's place.</param>
    /// <param name="announced">What was planned before.</param>
    /// <returns>Null when all is done.</returns>
    public PlanCase? From(int today, IEnumerable<Booking> announced)
    {
        ImmutableArray<PlanTask> open =
        [
            .. plan.Tasks.Where(task => !IsDone(task.Id)).Select(task => task with
            {
                Hours = left[task.Id],
                After = [.. task.After.Where(first => !IsDone(first))],
                Chances =
                [
                    IsWorkable(task.Id, today) ? 1 : null, .. task.Chances.Skip(today + 1),
                ],
            }),
        ];
        if (open.IsEmpty)
            return null;
        var ids = open.Select(task => task.Id).ToHashSet();
        var first = plan.DayAt(today);
        return PlanCase.Of(
            new(first, plan.Days.End), open, plan.Crews, plan.Equipment, plan.Travel,
            [.. plan.TooClose.Where(pair => ids.Contains(pair.TaskId) && ids.Contains(pair.OtherTaskId))],
            [.. announced.Where(booking => ids.Contains(booking.TaskId) && booking.Day >= first)], [], plan.Weights);
    }
}
