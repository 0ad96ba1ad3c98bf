using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>Why a crew cannot do a task on a day. In the order in which a plan names them.</summary>
public enum Hindrance
{
    /// <summary>The task is closed on the day, or not known to be workable.</summary>
    NotWorkable,

    /// <summary>The day is before the first day of the task.</summary>
    TooEarly,

    /// <summary>The day is after the deadline.</summary>
    TooLate,

    /// <summary>The crew does not work on the day.</summary>
    CrewOff,

    /// <summary>Fewer people are there than the task needs.</summary>
    TooFewPeople,

    /// <summary>Nobody who is there holds a certificate that the task needs.</summary>
    NoCertificate,

    /// <summary>A kind of equipment that the task needs is not to be had.</summary>
    NoEquipment,

    /// <summary>The drive there and back leaves no time for work.</summary>
    TooFar,
}

/// <summary>What a crew can do on a day, told by one place for plans and for whoever checks them.</summary>
public static class CrewDay
{
    /// <summary>The shortest piece of work that a crew drives to, hours: common practice, no source.</summary>
    public const double ShortestHours = 1;

    private const double MinutesPerHour = 60;

    /// <returns>What stands against it; null when nothing does. What other crews do is not looked at.</returns>
    public static Hindrance? Of(PlanCase plan, PlanTask task, PlanCrew crew, LocalDate day)
    {
        if (plan.ChanceOf(task, day) is null)
            return Hindrance.NotWorkable;
        if (day < task.NotBefore)
            return Hindrance.TooEarly;
        if (day > task.Deadline)
            return Hindrance.TooLate;
        if (!crew.WorksOn(day))
            return Hindrance.CrewOff;
        var present = crew.Present(day).ToList();
        if (present.Count < task.CrewSize)
            return Hindrance.TooFewPeople;
        if (task.Skills.Any(skill => !present.Exists(member => Holds(member, skill, day))))
            return Hindrance.NoCertificate;
        if (task.EquipmentKinds.Any(kind => !Usable(plan, kind, crew.Id, day).Any()))
            return Hindrance.NoEquipment;
        return HoursLeft(plan, task, crew) < Math.Min(ShortestHours, crew.HoursOf(task)) ? Hindrance.TooFar : null;
    }

    /// <summary>The pieces of a kind that a crew may have on a day; its own first.</summary>
    public static IEnumerable<PlanEquipment> Usable(PlanCase plan, string kind, string crewId, LocalDate day) => plan.Equipment
        .Where(piece => piece.Kind == kind && (piece.CrewId is null || piece.CrewId == crewId)
            && !piece.OutOfService.Contains(day))
        .OrderByDescending(piece => piece.CrewId is not null);

    /// <summary>Hours of a crew's day that the drive to a task and back leaves.</summary>
    public static double HoursLeft(PlanCase plan, PlanTask task, PlanCrew crew) =>
        HoursLeft(plan, task, crew, []);

    /// <summary>Hours that a crew's other work of a day, with each of its drives there and back, leaves for a task.</summary>
    /// <param name="plan">The case.</param>
    /// <param name="task">The task.</param>
    /// <param name="crew">The crew.</param>
    /// <param name="beside">The crew's other bookings of the day.</param>
    public static double HoursLeft(PlanCase plan, PlanTask task, PlanCrew crew, IReadOnlyCollection<Booking> beside)
    {
        var places = beside.Select(booking => plan.Tasks.First(one => one.Id == booking.TaskId).Place).Append(task.Place).Distinct();
        return crew.HoursPerDay - beside.Sum(booking => booking.Hours)
            - places.Sum(place => plan.Travel.RoundTripMinutes(crew.Base, place)) / MinutesPerHour;
    }

    private static bool Holds(PlanMember member, string skill, LocalDate day) =>
        member.Certificates.Any(held => held.Title == skill && !(day > held.ValidUntil));
}
