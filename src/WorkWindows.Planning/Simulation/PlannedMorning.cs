using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Crews;

namespace WorkWindows.Planning.Simulation;

/// <summary>Follows a plan, and makes another each week and whenever a crew cannot work as planned.</summary>
internal sealed class PlannedMorning(PlanLimits limits) : IMorning
{
    private const int DaysAWeek = 7;
    private IReadOnlyList<Booking> planned = [];

    public IReadOnlyList<Booking> Choose(PlayedSeason season, int day)
    {
        var today = season.Plan.DayAt(day);
        var booked = planned.Where(booking => booking.Day == today).ToList();
        var idle = season.Plan.Crews.Any(crew => crew.WorksOn(today) && booked.TrueForAll(booking => booking.CrewId != crew.Id))
            && season.Plan.Tasks.Any(task => !season.IsDone(task.Id) && season.IsWorkable(task.Id, day));
        if (day % DaysAWeek == 0 || idle || booked.Exists(booking => !season.IsWorkable(booking.TaskId, day)))
        {
            if (season.From(day, planned) is not { } rest)
                return [];
            planned = CrewPlanner.Plan(rest, limits).Bookings;
        }
        return [.. planned.Where(booking => booking.Day == today)];
    }
}
