using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>A crew that does a task from a day on.</summary>
/// <param name="Task">The task's place in the case.</param>
/// <param name="Crew">The crew's place in the case.</param>
/// <param name="Days">The days, ascending, as places among the days of the case.</param>
/// <param name="Minutes">Minutes of work on each.</param>
/// <param name="MeanChance">The chance of its days, each counted by its minutes.</param>
internal sealed record TaskWay(
    int Task, int Crew, ImmutableArray<int> Days, ImmutableArray<int> Minutes, double MeanChance);

/// <summary>The ways in which crews may do tasks.</summary>
internal static class TaskWays
{
    /// <summary>
    /// A task that takes several days goes on after a break of at most so many days: common practice, no source.
    /// </summary>
    public const int LongestBreakDays = 7;

    private const int MinutesPerHour = 60;

    /// <summary>Hours that are whole minutes but for the last digits of their sum are no minute more.</summary>
    private const double Digits = 1e-6;

    /// <summary>
    /// All ways of a task: each crew, from each day on which it can, on the next days on which it can, whole days until the
    /// work is done.
    /// </summary>
    /// <param name="plan">The case.</param>
    /// <param name="index">The task's place in it.</param>
    /// <param name="hours">What is to be done, hours at the usual pace.</param>
    /// <param name="allows">Whether what is set lets a crew do it on a day; a day on which it does not is passed over.</param>
    public static IEnumerable<TaskWay> Of(PlanCase plan, int index, double hours, Func<PlanCrew, LocalDate, bool> allows)
    {
        var task = plan.Tasks[index];
        for (var crew = 0; crew < plan.Crews.Length; crew++)
        {
            int[] days =
            [
                .. Enumerable.Range(0, plan.Days.Length)
                    .Where(day => CrewDay.Of(plan, task, plan.Crews[crew], plan.DayAt(day)) is null
                        && allows(plan.Crews[crew], plan.DayAt(day))),
            ];
            // Rounded as the day and the drive are, so that both together never make more than the day.
            var most = (int)Math.Floor(plan.Crews[crew].HoursPerDay * MinutesPerHour)
                - (int)Math.Ceiling(plan.Travel.RoundTripMinutes(plan.Crews[crew].Base, task.Place));
            var minutes = (int)Math.Ceiling(hours * plan.Crews[crew].PaceAt(task) * MinutesPerHour - Digits);
            for (var first = 0; most > 0 && first < days.Length; first++)
            {
                if (From(task, index, crew, days, first, most, minutes) is { } way)
                    yield return way;
            }
        }
    }

    private static TaskWay? From(PlanTask task, int index, int crew, int[] days, int first, int most, int minutes)
    {
        var (used, spent) = (ImmutableArray.CreateBuilder<int>(), ImmutableArray.CreateBuilder<int>());
        var left = minutes;
        for (var at = first; left > 0; at++)
        {
            if (at == days.Length || (at > first && days[at] - days[at - 1] - 1 > LongestBreakDays))
                return null;
            used.Add(days[at]);
            spent.Add(Math.Min(left, most));
            left -= spent[^1];
        }
        var chance = used.Zip(spent, (day, share) => task.Chances[day]!.Value * share).Sum() / minutes;
        return new(index, crew, used.ToImmutable(), spent.ToImmutable(), chance);
    }
}
