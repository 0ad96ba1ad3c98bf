using System.Collections.Immutable;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Routes;

namespace WorkWindows.Planning.Crews;

/// <summary>Orders the work of each crew's day so that the least time is driven.</summary>
public static class CrewTours
{
    private const double MinutesInADay = 1_440;

    /// <returns>The same bookings by day and crew, in the order of the day.</returns>
    public static ImmutableArray<Booking> Ordered(PlanCase plan, IEnumerable<Booking> bookings)
    {
        var places = plan.Tasks.ToDictionary(task => task.Id, task => task.Place);
        return
        [
            .. bookings.GroupBy(booking => (booking.Day, booking.CrewId)).OrderBy(day => day.Key.Day)
                .ThenBy(day => day.Key.CrewId, StringComparer.Ordinal).SelectMany(day =>
                {
                    var tour = Tour(plan, day.Key.CrewId, [.. day.Select(one => places[one.TaskId]).Distinct()]);
                    return day.OrderBy(one => tour.IndexOf(places[one.TaskId])).ThenBy(one => one.TaskId, StringComparer.Ordinal)
                        .Select((one, place) => one with { Place = place });
                }),
        ];
    }

    /// <summary>What all crews drive on all days, in the order of the bookings.</summary>
    public static double TravelMinutes(PlanCase plan, IEnumerable<Booking> bookings) =>
        bookings.GroupBy(booking => (booking.Day, booking.CrewId)).Sum(day => TravelMinutes(plan, day.Key.CrewId, day));

    /// <summary>What a crew drives on a day, in the order of the bookings.</summary>
    /// <param name="plan">The case.</param>
    /// <param name="crewId">The crew.</param>
    /// <param name="day">Its bookings of the day.</param>
    public static double TravelMinutes(PlanCase plan, string crewId, IEnumerable<Booking> day)
    {
        var @base = plan.Crews.First(crew => crew.Id == crewId).Base;
        var places = plan.Tasks.ToDictionary(task => task.Id, task => task.Place);
        string[] stops = [.. day.OrderBy(booking => booking.Place).Select(booking => places[booking.TaskId])];
        if (@base is not null)
            stops = [@base, .. stops, @base];
        return stops.Zip(stops.Skip(1), plan.Travel.Minutes).Sum();
    }

    private static List<string> Tour(PlanCase plan, string crewId, List<string> places)
    {
        // The way there and back, and any order of two, is the same backwards, or as short as it gets.
        if (places.Count < 2)
            return places;
        var @base = plan.Crews.First(crew => crew.Id == crewId).Base;
        var stops = places.Prepend(@base).ToArray();
        var found = RouteModel.Solve(
            new(
                [.. stops.Select(_ => new Stop(0, 0, MinutesInADay, 0))],
                [.. stops.Select(from => stops.Select(to => Minutes(from, to)).ToImmutableArray())], Vehicles: 1, Capacity: 0),
            seconds: 0);
        return found is null ? places : [.. found.Tours.SelectMany(tour => tour).Select(stop => places[stop - 1])];

        double Minutes(string? from, string? to) => from is null || to is null ? 0 : plan.Travel.Minutes(from, to);
    }
}
