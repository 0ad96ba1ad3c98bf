using System.Collections.Immutable;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Seasons;

namespace WorkWindows.Planning.Crews;

/// <summary>Plans which crew does which task on which days.</summary>
/// <remarks>Source: docs/rules/crew-plans.md.</remarks>
public static class CrewPlanner
{
    private const double MinutesPerHour = 60;

    /// <param name="plan">The case.</param>
    /// <param name="limits">How long to search.</param>
    /// <returns>The best plan found; where nothing can be done, one without bookings that says why.</returns>
    public static CrewPlan Plan(PlanCase plan, PlanLimits limits)
    {
        var problem = new PlanProblem(plan);
        // Nothing planned is a plan, so that one is always found.
        var found = SeasonSearch.Solve(problem.Season, limits);
        var bound = problem.IsWhole ? Math.Min(problem.Points(found.Bound), problem.Bound) : problem.Bound;
        ImmutableArray<TaskWay?> ways =
        [
            .. found.Chosen.Select((option, task) => option is { } way && way < problem.Ways[task].Length
                ? problem.Ways[task][way]
                : null),
        ];
        var bookings = CrewTours.Ordered(plan, [.. plan.Fixed, .. ways.OfType<TaskWay>().SelectMany(way => Bookings(plan, way))]);
        return new(
            EquipmentHandout.Of(plan, bookings), LeftOutTasks.Of(plan, problem, ways), problem.Points(found.Objective),
            bound, found.IsOptimal && problem.IsWhole, ExpectedBenefit(plan, bookings),
            CrewTours.TravelMinutes(plan, bookings), Changes(plan, bookings), limits.Seed);
    }

    /// <summary>What is set by hand counts like all else; work that is booked in part brings nothing yet.</summary>
    private static double ExpectedBenefit(PlanCase plan, IEnumerable<Booking> bookings)
    {
        var byTask = bookings.Where(booking => plan.Days.Contains(booking.Day)).ToLookup(booking => booking.TaskId);
        return plan.Tasks.Where(task => TaskProgress.IsWhole(plan, task, byTask[task.Id]))
            .Sum(task => task.Benefit * byTask[task.Id].Sum(
                booking => (plan.ChanceOf(task, booking.Day) ?? 0) * booking.Hours) / byTask[task.Id].Sum(booking => booking.Hours));
    }

    /// <summary>How many announced days are not kept by the same crew.</summary>
    public static int Changes(PlanCase plan, IReadOnlyCollection<Booking> bookings)
    {
        var kept = bookings.Select(booking => (booking.TaskId, booking.CrewId, booking.Day)).ToHashSet();
        return plan.Announced.Count(booking => !kept.Contains((booking.TaskId, booking.CrewId, booking.Day)));
    }

    private static IEnumerable<Booking> Bookings(PlanCase plan, TaskWay way) => way.Days.Zip(way.Minutes, (index, minutes) =>
    {
        var (crew, day) = (plan.Crews[way.Crew], plan.DayAt(index));
        return new Booking(plan.Tasks[way.Task].Id, crew.Id, day, minutes / MinutesPerHour)
        {
            Members = [.. crew.Present(day).Select(member => member.Id)],
        };
    });
}
