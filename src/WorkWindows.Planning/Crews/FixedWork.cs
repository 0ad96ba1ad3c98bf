using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>What is set already, and what it leaves to others.</summary>
internal sealed class FixedWork
{
    private const double MinutesPerHour = 60;
    private readonly PlanCase plan;
    private readonly ILookup<string, Booking> byTask;
    private readonly ILookup<LocalDate, Booking> byDay;
    private readonly Dictionary<string, string> places;
    private readonly HashSet<(string, string)> close;

    public FixedWork(PlanCase plan)
    {
        this.plan = plan;
        var within = plan.Fixed.Where(booking => plan.Days.Contains(booking.Day)).ToList();
        (byTask, byDay) = (within.ToLookup(booking => booking.TaskId), within.ToLookup(booking => booking.Day));
        places = plan.Tasks.ToDictionary(task => task.Id, task => task.Place);
        close = [.. plan.TooClose.SelectMany(pair => new[] { (pair.TaskId, pair.OtherTaskId), (pair.OtherTaskId, pair.TaskId) })];
    }

    public bool Has(string taskId) => byTask.Contains(taskId);

    /// <summary>How much of a task is set, hours at the usual pace.</summary>
    public double HoursOf(PlanTask task) => TaskProgress.Done(plan, task, byTask[task.Id]);

    /// <summary>Whether all of a task is set, but for what rounding leaves.</summary>
    public bool IsWhole(PlanTask task) => Has(task.Id) && TaskProgress.IsWhole(plan, task, byTask[task.Id]);

    /// <summary>Whether work of a task is set to a day on which it may not be worked, so that nobody knows when it ends.</summary>
    public bool IsOnClosedDay(string taskId) =>
        byTask[taskId].Any(booking => plan.ChanceOf(plan.Tasks.First(task => task.Id == taskId), booking.Day) is null);

    public bool Has(string taskId, LocalDate day) => byTask[taskId].Any(booking => booking.Day == day);

    /// <returns>The places of its first and last day among the days of the case; 0 and -1 where nothing is set.</returns>
    public (int First, int Last) SpanOf(string taskId) => Has(taskId)
        ? (byTask[taskId].Min(booking => plan.IndexOf(booking.Day)), byTask[taskId].Max(booking => plan.IndexOf(booking.Day)))
        : (0, -1);

    /// <summary>Minutes of a crew's day that are taken, drives included.</summary>
    public int MinutesOn(PlanCrew crew, LocalDate day)
    {
        var work = byDay[day].Where(booking => booking.CrewId == crew.Id).ToList();
        return (int)Math.Ceiling(work.Sum(booking => booking.Hours) * MinutesPerHour
            + work.Select(booking => places[booking.TaskId]).Distinct()
                .Sum(place => plan.Travel.RoundTripMinutes(crew.Base, place)));
    }

    /// <summary>Whether a crew is at a place on a day anyway.</summary>
    public bool IsAt(PlanCrew crew, string place, LocalDate day) =>
        byDay[day].Any(booking => booking.CrewId == crew.Id && places[booking.TaskId] == place);

    /// <summary>How many pieces that every crew may have are taken on a day, and not by a crew.</summary>
    public int Taken(string kind, LocalDate day)
    {
        var pool = plan.Equipment.Where(piece => piece.Kind == kind && piece.CrewId is null).Select(piece => piece.Id).ToHashSet();
        return byDay[day].SelectMany(booking => booking.EquipmentIds).Where(pool.Contains).Distinct().Count();
    }

    /// <summary>Whether a crew has a piece of a kind on a day anyway, and may have it.</summary>
    public bool Holds(PlanCrew crew, string kind, LocalDate day)
    {
        var held = byDay[day].Where(booking => booking.CrewId == crew.Id).SelectMany(booking => booking.EquipmentIds).ToHashSet();
        return CrewDay.Usable(plan, kind, crew.Id, day).Any(piece => held.Contains(piece.Id));
    }

    /// <summary>Whether a crew has a piece of its own of a kind on a day, which nobody else was given.</summary>
    public bool HasOwn(PlanCrew crew, string kind, LocalDate day) => CrewDay.Usable(plan, kind, crew.Id, day).Any(piece =>
        piece.CrewId is not null
        && !byDay[day].Any(booking => booking.CrewId != crew.Id && booking.EquipmentIds.Contains(piece.Id)));

    /// <summary>Whether what is set lets a crew do a task on a day.</summary>
    public bool Allows(PlanTask task, PlanCrew crew, LocalDate day)
    {
        var people = crew.Present(day).Select(member => member.Id).ToHashSet();
        foreach (var other in byDay[day])
        {
            if (other.TaskId == task.Id)
                return false;
            if (other.CrewId == crew.Id)
            {
                // Without a base nobody knows how long the way from one property to another is.
                if (crew.Base is null && places[other.TaskId] != task.Place)
                    return false;
                continue;
            }
            if (close.Contains((other.TaskId, task.Id)))
                return false;
            // Whoever is booked with it stays with it, whichever crew they are of by now.
            if (other.Members.Any(people.Contains))
                return false;
        }
        return true;
    }
}
