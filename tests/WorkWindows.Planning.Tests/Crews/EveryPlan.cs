using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Checks;

namespace WorkWindows.Planning.Tests.Crews;

/// <summary>
/// The best of all plans of a small case, found by trying each: every crew on every set of days in every task. It shares
/// only the check of hard rules with the planner.
/// </summary>
internal static class EveryPlan
{
    private const double MinutesPerHour = 60;

    public static double Best(PlanCase plan) => Best(plan, 0, []);

    private static double Best(PlanCase plan, int index, List<Booking> made)
    {
        if (index == plan.Tasks.Length)
            return IsPlan(plan, [.. made.OrderBy(one => PlaceOf(plan, one))]) ? Points(plan, made) : double.NegativeInfinity;
        var best = Best(plan, index + 1, made);
        foreach (var crew in plan.Crews)
        {
            for (var set = 1; set < 1 << plan.Days.Length; set++)
            {
                if (Spread(plan, plan.Tasks[index], crew, set) is { } work)
                    best = Math.Max(best, Best(plan, index + 1, [.. made, .. work]));
            }
        }
        return best;
    }

    /// <summary>Whole days but for the last one; no workable day of the crew between the first and the last is skipped.</summary>
    private static List<Booking>? Spread(PlanCase plan, PlanTask task, PlanCrew crew, int set)
    {
        var days = Enumerable.Range(0, plan.Days.Length).Where(day => (set >> day & 1) != 0).ToList();
        // Counted in whole minutes, as the planner does.
        var most = Math.Floor((crew.HoursPerDay - plan.Travel.RoundTripMinutes(crew.Base, task.Place) / MinutesPerHour) * MinutesPerHour);
        var left = Math.Ceiling(task.Hours * crew.PaceAt(task) * MinutesPerHour - 1e-6);
        if (most < Math.Min(MinutesPerHour, left) || days.Count != (int)Math.Ceiling(left / most))
            return null;
        var work = new List<Booking>();
        foreach (var day in days)
        {
            var minutes = Math.Min(left, most);
            left -= minutes;
            work.Add(Booking(plan, task, crew, day, minutes / MinutesPerHour));
        }
        var skipped = Enumerable.Range(days[0], days[^1] - days[0]).Except(days)
            .Select(day => Booking(plan, task, crew, day, 0.1)).Where(one => Alone(plan, one)).ToList();
        return skipped.Count == 0 && work.TrueForAll(one => Alone(plan, one)) ? work : null;
    }

    private static Booking Booking(PlanCase plan, PlanTask task, PlanCrew crew, int day, double hours)
    {
        var date = plan.DayAt(day);
        return new(task.Id, crew.Id, date, hours)
        {
            Members = [.. crew.Members.Where(member => !member.DaysOff.Contains(date)).Select(member => member.Id)],
            EquipmentIds = [.. plan.Equipment.Where(piece => task.EquipmentKinds.Contains(piece.Kind)
                && (piece.CrewId is null || piece.CrewId == crew.Id) && !piece.OutOfService.Contains(date)).Select(piece => piece.Id)],
        };
    }

    private static bool Alone(PlanCase plan, Booking booking) => PlanCheck.Broken(plan, [booking])
        .All(broken => broken.Rule is HardRule.OutOfOrder);

    /// <summary>Nobody drives to a place twice on a day.</summary>
    private static string PlaceOf(PlanCase plan, Booking booking) => plan.Tasks.First(task => task.Id == booking.TaskId).Place;

    /// <summary>One of the pieces of a kind is enough, so that which is taken is tried too.</summary>
    private static bool IsPlan(PlanCase plan, List<Booking> made) =>
        Handouts(plan, made, 0).Any(handed => PlanCheck.Broken(plan, handed).IsEmpty) && Fits(plan, made);

    private static IEnumerable<List<Booking>> Handouts(PlanCase plan, List<Booking> made, int index)
    {
        if (index == made.Count)
            return [made];
        return made[index].EquipmentIds.Length < 2
            ? Handouts(plan, made, index + 1)
            : made[index].EquipmentIds.SelectMany(piece =>
            {
                var one = new List<Booking>(made) { [index] = made[index] with { EquipmentIds = [piece] } };
                return Handouts(plan, one, index + 1);
            });
    }

    /// <summary>There and back to each place fits into the day; a crew without a base is at one place a day.</summary>
    private static bool Fits(PlanCase plan, List<Booking> made) => ByDay(plan, made).All(day =>
        (day.Crew.Base is not null || day.Places.Length == 1)
        && day.Minutes + day.Places.Sum(place => Math.Ceiling(plan.Travel.RoundTripMinutes(day.Crew.Base, place)))
            <= day.Crew.HoursPerDay * MinutesPerHour + 1e-6);

    private static double Points(PlanCase plan, List<Booking> made)
    {
        var benefit = made.GroupBy(booking => booking.TaskId).Sum(work =>
        {
            var task = plan.Tasks.First(one => one.Id == work.Key);
            var chance = work.Sum(booking => booking.Hours * plan.ChanceOf(task, booking.Day)!.Value) / work.Sum(booking => booking.Hours);
            var last = (double)work.Max(booking => plan.IndexOf(booking.Day));
            if (plan.Announced.Where(booking => booking.TaskId == task.Id).Select(booking => (int?)plan.IndexOf(booking.Day)).Max() is { } told)
                last = told + Math.Max(0, last - told) * plan.Weights.ToldLateShare;
            var late = last / (plan.Days.Length - 1);
            return task.Benefit * chance * (1 - plan.Weights.LateShare * late);
        });
        var travel = ByDay(plan, made).Sum(day => day.Places.Sum(place => plan.Travel.RoundTripMinutes(day.Crew.Base, place)));
        var kept = made.Select(booking => (booking.TaskId, booking.CrewId, booking.Day)).ToHashSet();
        var changes = plan.Announced.Count(booking => !kept.Contains((booking.TaskId, booking.CrewId, booking.Day)));
        return benefit - travel / MinutesPerHour * plan.Weights.PointsPerTravelHour - changes * plan.Weights.PointsPerChange;
    }

    private static IEnumerable<(PlanCrew Crew, double Minutes, string[] Places)> ByDay(PlanCase plan, List<Booking> made) =>
        made.GroupBy(booking => (booking.Day, booking.CrewId)).Select(day => (
            plan.Crews.First(crew => crew.Id == day.Key.CrewId), day.Sum(booking => booking.Hours) * MinutesPerHour,
            day.Select(booking => PlaceOf(plan, booking)).Distinct().ToArray()));
}
