using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Crews;

namespace WorkWindows.Planning.Checks;

/// <summary>A rule that no plan breaks.</summary>
public enum HardRule
{
    /// <summary>Work on a day that is closed or not known.</summary>
    ClosedDay,

    /// <summary>Work before the first day of a task.</summary>
    BeforeFirstDay,

    /// <summary>Work after the deadline.</summary>
    AfterDeadline,

    /// <summary>Work while the crew, or somebody who is booked, is off.</summary>
    DayOff,

    /// <summary>Somebody is booked who is not of the crew.</summary>
    NotOfTheCrew,

    /// <summary>Fewer people than the task needs.</summary>
    TooFewPeople,

    /// <summary>Nobody booked holds a certificate.</summary>
    NoCertificate,

    /// <summary>Equipment that the task needs is not taken, or may not be.</summary>
    NoEquipment,

    /// <summary>A person is with two crews on a day.</summary>
    PersonTwice,

    /// <summary>A piece of equipment is with two crews on a day.</summary>
    EquipmentTwice,

    /// <summary>Two crews are within the spacing distance on a day, or at the same work.</summary>
    TooClose,

    /// <summary>Work begins before what comes first has ended on an earlier day.</summary>
    OutOfOrder,

    /// <summary>A day is longer than the crew's hours, drives included.</summary>
    DayTooLong,

    /// <summary>More hours are booked than the task takes.</summary>
    TooManyHours,
}

/// <summary>A rule that bookings break.</summary>
/// <param name="Rule">Which.</param>
/// <param name="TaskId">The task; null where it is of a whole day.</param>
/// <param name="CrewId">The crew.</param>
/// <param name="Day">The day.</param>
/// <param name="Other">The other crew, task, person, certificate, kind or piece that it is about; null for none.</param>
public sealed record BrokenRule(HardRule Rule, string? TaskId, string CrewId, LocalDate Day, string? Other = null);

/// <summary>
/// Tells which hard rules bookings break. It knows nothing of how plans are made, so that it can judge them, and what
/// people put on the board by hand.
/// </summary>
public static class PlanCheck
{
    private const double MinutesPerHour = 60;

    /// <param name="plan">The case.</param>
    /// <param name="bookings">What is booked in it, what is fixed included.</param>
    /// <returns>By day, crew and rule; none where all is well.</returns>
    public static ImmutableArray<BrokenRule> Broken(PlanCase plan, IReadOnlyCollection<Booking> bookings)
    {
        var tasks = plan.Tasks.ToDictionary(task => task.Id);
        var crews = plan.Crews.ToDictionary(crew => crew.Id);
        var byDay = bookings.GroupBy(booking => booking.Day).ToList();
        return
        [
            .. bookings.SelectMany(booking => OfBooking(plan, tasks[booking.TaskId], crews[booking.CrewId], booking))
                .Concat(byDay.SelectMany(day => Twice(day)))
                .Concat(byDay.SelectMany(day => Close(plan, [.. day])))
                .Concat(OutOfOrder(plan, bookings))
                .Concat(TooLong(plan, crews, bookings))
                .Concat(TooMany(plan, tasks, bookings))
                .Distinct().OrderBy(broken => broken.Day).ThenBy(broken => broken.CrewId, StringComparer.Ordinal)
                .ThenBy(broken => broken.Rule).ThenBy(broken => broken.TaskId, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<BrokenRule> OfBooking(PlanCase plan, PlanTask task, PlanCrew crew, Booking booking)
    {
        var day = booking.Day;
        if (plan.ChanceOf(task, day) is null)
            yield return Broken(HardRule.ClosedDay);
        if (day < task.NotBefore)
            yield return Broken(HardRule.BeforeFirstDay);
        if (day > task.Deadline)
            yield return Broken(HardRule.AfterDeadline);
        if (!crew.WorksOn(day))
            yield return Broken(HardRule.DayOff);
        var people = crew.Members.Where(member => booking.Members.Contains(member.Id)).ToList();
        foreach (var off in people.Where(member => member.DaysOff.Contains(day)))
            yield return Broken(HardRule.DayOff, off.Id);
        foreach (var stranger in booking.Members.Where(id => people.TrueForAll(member => member.Id != id)))
            yield return Broken(HardRule.NotOfTheCrew, stranger);
        if (people.Count < task.CrewSize)
            yield return Broken(HardRule.TooFewPeople);
        foreach (var skill in task.Skills.Where(skill => !people.Exists(member => member.Certificates.Any(
            held => held.Title == skill && (held.ValidUntil is null || held.ValidUntil >= day)))))
        {
            yield return Broken(HardRule.NoCertificate, skill);
        }
        var pieces = plan.Equipment.Where(piece => booking.EquipmentIds.Contains(piece.Id)).ToList();
        foreach (var kind in task.EquipmentKinds.Where(kind => !pieces.Exists(piece => piece.Kind == kind
            && (piece.CrewId is null || piece.CrewId == crew.Id) && !piece.OutOfService.Contains(day))))
        {
            yield return Broken(HardRule.NoEquipment, kind);
        }

        BrokenRule Broken(HardRule rule, string? other = null) => new(rule, task.Id, crew.Id, day, other);
    }

    private static IEnumerable<BrokenRule> Twice(IGrouping<LocalDate, Booking> day)
    {
        var people = day.SelectMany(booking => booking.Members.Select(id => (Id: id, booking.CrewId)));
        var pieces = day.SelectMany(booking => booking.EquipmentIds.Select(id => (Id: id, booking.CrewId)));
        return Of(people, HardRule.PersonTwice).Concat(Of(pieces, HardRule.EquipmentTwice));

        IEnumerable<BrokenRule> Of(IEnumerable<(string Id, string CrewId)> with, HardRule rule) =>
            from one in with.Distinct()
            group one.CrewId by one.Id into same
            where same.Count() > 1
            from crew in same
            select new BrokenRule(rule, null, crew, day.Key, same.Key);
    }

    private static IEnumerable<BrokenRule> Close(PlanCase plan, IReadOnlyList<Booking> day)
    {
        var here = day.ToLookup(booking => booking.TaskId);
        return from pair in plan.TooClose.Concat(here.Select(work => new TooClose(work.Key, work.Key)))
               from one in here[pair.TaskId]
               from other in here[pair.OtherTaskId]
               where one.CrewId != other.CrewId
               from broken in new[]
               {
                   new BrokenRule(HardRule.TooClose, one.TaskId, one.CrewId, one.Day, other.CrewId),
                   new BrokenRule(HardRule.TooClose, other.TaskId, other.CrewId, other.Day, one.CrewId),
               }
               select broken;
    }

    /// <summary>What comes first must be booked whole, and end on an earlier day.</summary>
    private static IEnumerable<BrokenRule> OutOfOrder(PlanCase plan, IReadOnlyCollection<Booking> bookings)
    {
        var byTask = bookings.ToLookup(booking => booking.TaskId);
        foreach (var task in plan.Tasks.Where(task => byTask.Contains(task.Id)))
        {
            var begins = byTask[task.Id].MinBy(booking => booking.Day)!;
            foreach (var first in plan.Tasks.Where(one => task.After.Contains(one.Id)))
            {
                if (!TaskProgress.IsWhole(plan, first, byTask[first.Id].Where(booking => booking.Day < begins.Day)))
                    yield return new(HardRule.OutOfOrder, task.Id, begins.CrewId, begins.Day, first.Id);
            }
        }
    }

    private static IEnumerable<BrokenRule> TooLong(
        PlanCase plan, Dictionary<string, PlanCrew> crews, IReadOnlyCollection<Booking> bookings) =>
        from day in bookings.GroupBy(booking => (booking.Day, booking.CrewId))
        let hours = day.Sum(booking => booking.Hours)
            + CrewTours.TravelMinutes(plan, day.Key.CrewId, day) / MinutesPerHour
        where hours > crews[day.Key.CrewId].HoursPerDay + TaskProgress.Tolerance * day.Count()
        select new BrokenRule(HardRule.DayTooLong, null, day.Key.CrewId, day.Key.Day);

    private static IEnumerable<BrokenRule> TooMany(
        PlanCase plan, Dictionary<string, PlanTask> tasks, IReadOnlyCollection<Booking> bookings) =>
        from task in bookings.GroupBy(booking => booking.TaskId)
        where TaskProgress.IsTooMuch(plan, tasks[task.Key], task)
        let last = task.MaxBy(booking => booking.Day)!
        select new BrokenRule(HardRule.TooManyHours, task.Key, last.CrewId, last.Day);
}
