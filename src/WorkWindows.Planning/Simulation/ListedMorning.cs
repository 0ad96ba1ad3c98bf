using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;

namespace WorkWindows.Planning.Simulation;

/// <summary>
/// Gives each crew the first tasks of a list that may be worked today, as many as the day holds: first what is nearer to it
/// than to any other crew, so that none drives far for what another could do.
/// </summary>
/// <param name="order">Puts the tasks that are left into the order of the list.</param>
internal sealed class ListedMorning(Func<IEnumerable<PlanTask>, IEnumerable<PlanTask>> order) : IMorning
{
    public IReadOnlyList<Booking> Choose(PlayedSeason season, int day)
    {
        if (season.From(day, []) is not { } rest)
            return [];
        var chosen = new List<Booking>();
        foreach (var crew in rest.Crews)
        {
            foreach (var task in order(rest.Tasks).Where(task => task.After.IsEmpty && chosen.TrueForAll(one => one.TaskId != task.Id))
                .OrderBy(task => IsNearest(rest, crew, task) ? 0 : 1))
            {
                if (With(rest, chosen, crew, task) is { } more)
                    chosen = more;
            }
        }
        return chosen;
    }

    private static bool IsNearest(PlanCase rest, PlanCrew crew, PlanTask task) => rest.Crews.All(other =>
        rest.Travel.RoundTripMinutes(crew.Base, task.Place) <= rest.Travel.RoundTripMinutes(other.Base, task.Place));

    /// <returns>The day with a task more; null where a hard rule stands against it.</returns>
    private static List<Booking>? With(PlanCase rest, List<Booking> chosen, PlanCrew crew, PlanTask task)
    {
        var day = rest.Days.Start;
        if (CrewDay.Of(rest, task, crew, day) is not null)
            return null;
        var mine = chosen.FindAll(booking => booking.CrewId == crew.Id);
        var places = mine.Select(booking => rest.Tasks.First(one => one.Id == booking.TaskId).Place).Append(task.Place).Distinct();
        var hours = Math.Min(crew.HoursOf(task), CrewDay.HoursLeft(rest, task, crew, mine));
        if (hours < Math.Min(CrewDay.ShortestHours, crew.HoursOf(task)) || (crew.Base is null && places.Count() > 1))
            return null;
        var booking = new Booking(task.Id, crew.Id, day, hours, mine.Count)
        {
            Members = [.. crew.Present(day).Select(member => member.Id)],
        };
        List<Booking> more = [.. EquipmentHandout.Of(rest, [.. chosen, booking])];
        return PlanCheck.Broken(rest, more).IsEmpty ? more : null;
    }
}
