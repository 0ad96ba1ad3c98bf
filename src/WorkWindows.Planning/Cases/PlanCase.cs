using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Planning.Cases;

/// <summary>All that a plan is made of.</summary>
public sealed record PlanCase
{
    private const double HoursInADay = 24;

    private PlanCase()
    {
    }

    /// <summary>The days that are planned, both ends included.</summary>
    public required DateInterval Days { get; init; }

    public required ImmutableArray<PlanTask> Tasks { get; init; }
    public required ImmutableArray<PlanCrew> Crews { get; init; }
    public required ImmutableArray<PlanEquipment> Equipment { get; init; }
    public required TravelTimes Travel { get; init; }

    /// <summary>Pairs of tasks that two crews are never at on one day.</summary>
    public required ImmutableArray<TooClose> TooClose { get; init; }

    /// <summary>What people were told; a plan changes as little of it as it can.</summary>
    public required ImmutableArray<Booking> Announced { get; init; }

    /// <summary>What was set by hand or has begun; a plan keeps it as it is.</summary>
    public required ImmutableArray<Booking> Fixed { get; init; }

    public required PlanWeights Weights { get; init; }

    /// <exception cref="PlanCaseException">Something is not accepted; the message says what and names it.</exception>
    public static PlanCase Of(
        DateInterval days, ImmutableArray<PlanTask> tasks, ImmutableArray<PlanCrew> crews,
        ImmutableArray<PlanEquipment> equipment, TravelTimes travel, ImmutableArray<TooClose> tooClose,
        ImmutableArray<Booking> announced, ImmutableArray<Booking> @fixed, PlanWeights weights)
    {
        var made = new PlanCase
        {
            Days = days,
            Tasks = tasks,
            Crews = crews,
            Equipment = equipment,
            Travel = travel,
            TooClose = tooClose,
            Announced = announced,
            Fixed = @fixed,
            Weights = weights,
        };
        made.CheckTasks();
        made.CheckCrews();
        made.CheckBookings();
        return made;
    }

    /// <summary>The place of a day among the days, from 0.</summary>
    public int IndexOf(LocalDate day) => Period.DaysBetween(Days.Start, day);

    public LocalDate DayAt(int index) => Days.Start.PlusDays(index);

    /// <returns>The chance of a day; null where the task is never planned on it.</returns>
    public double? ChanceOf(PlanTask task, LocalDate day) =>
        Days.Contains(day) && task.Chances[IndexOf(day)] is > 0 and var chance ? chance : null;

    private void CheckTasks()
    {
        Once("task", Tasks.Select(task => task.Id));
        var ids = Tasks.Select(task => task.Id).ToHashSet();
        foreach (var task in Tasks)
        {
            if (!(task.Hours > 0) || !double.IsFinite(task.Hours))
                throw new PlanCaseException($"Task {task.Id} takes {task.Hours} hours: give a number above 0.");
            if (task.CrewSize < 1)
                throw new PlanCaseException($"Task {task.Id} has a crew of {task.CrewSize}: give 1 or more.");
            if (!(task.Benefit >= 0) || !double.IsFinite(task.Benefit))
                throw new PlanCaseException($"Task {task.Id} is worth {task.Benefit} points: give 0 or more.");
            if (task.Chances.Length != Days.Length)
            {
                throw new PlanCaseException(
                    $"Task {task.Id} has chances of {task.Chances.Length} days: give one for each of {Days.Length}.");
            }
            if (task.Chances.Any(chance => chance is not (null or (>= 0 and <= 1))))
                throw new PlanCaseException($"Task {task.Id} has a chance outside 0 to 1.");
            if (!Travel.Knows(task.Place))
                throw new PlanCaseException($"Task {task.Id} is at {task.Place}, a place that travel times do not know.");
            if (task.After.FirstOrDefault(first => !ids.Contains(first)) is { } unknown)
                throw new PlanCaseException($"Task {task.Id} comes after {unknown}, which is no task of the case.");
        }
        if (TooClose.SelectMany(pair => new[] { pair.TaskId, pair.OtherTaskId }).FirstOrDefault(id => !ids.Contains(id)) is { } stray)
            throw new PlanCaseException($"{stray} is said to be too close to another, and is no task of the case.");
        if (Circle() is { } circle)
            throw new PlanCaseException($"Task {circle} comes after itself.");
    }

    private void CheckCrews()
    {
        Once("crew", Crews.Select(crew => crew.Id));
        Once("piece of equipment", Equipment.Select(piece => piece.Id));
        foreach (var crew in Crews)
        {
            if (crew.HoursPerDay is not (> 0 and <= HoursInADay))
                throw new PlanCaseException($"Crew {crew.Id} works {crew.HoursPerDay} hours a day: give more than 0, at most 24.");
            foreach (var (practice, pace) in crew.Paces)
            {
                if (!(pace > 0) || !double.IsFinite(pace))
                    throw new PlanCaseException($"Crew {crew.Id} has a pace of {pace} at {practice}: give a number above 0.");
            }
            if (crew.Base is { } @base && !Travel.Knows(@base))
                throw new PlanCaseException($"Crew {crew.Id} is based at {@base}, a place that travel times do not know.");
            Once($"member of crew {crew.Id}", crew.Members.Select(member => member.Id));
        }
        if (Equipment.FirstOrDefault(piece => piece.CrewId is { } only && Crews.All(crew => crew.Id != only)) is { } lost)
            throw new PlanCaseException($"Equipment {lost.Id} is of crew {lost.CrewId}, which is no crew of the case.");
    }

    private void CheckBookings()
    {
        foreach (var booking in Announced.Concat(Fixed))
        {
            if (Tasks.All(task => task.Id != booking.TaskId))
                throw new PlanCaseException($"Task {booking.TaskId} is booked and is no task of the case.");
            if (Crews.All(crew => crew.Id != booking.CrewId))
                throw new PlanCaseException($"Crew {booking.CrewId} is booked and is no crew of the case.");
            if (!(booking.Hours > 0))
                throw new PlanCaseException($"Task {booking.TaskId} is booked for {booking.Hours} hours: give more than 0.");
        }
    }

    private static void Once(string what, IEnumerable<string> ids)
    {
        if (ids.GroupBy(id => id).FirstOrDefault(same => same.Count() > 1) is { } twice)
            throw new PlanCaseException($"The {what} {twice.Key} occurs twice.");
    }

    /// <returns>A task that comes after itself, or null.</returns>
    private string? Circle()
    {
        var tasks = Tasks.ToDictionary(task => task.Id);
        var done = new HashSet<string>();
        var open = new HashSet<string>();
        return Tasks.Select(task => Visit(task.Id)).FirstOrDefault(found => found is not null);

        string? Visit(string id)
        {
            if (done.Contains(id))
                return null;
            if (!open.Add(id))
                return id;
            var found = tasks[id].After.Select(Visit).FirstOrDefault(circle => circle is not null);
            open.Remove(id);
            done.Add(id);
            return found;
        }
    }
}
