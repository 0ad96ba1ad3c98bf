namespace WorkWindows.Planning.Cases;

/// <summary>How far bookings bring a task: a crew that is quicker than usual does more of it in an hour.</summary>
public static class TaskProgress
{
    /// <summary>Rounding of the minutes of a booking, hours of its crew.</summary>
    internal const double Tolerance = 0.02;

    /// <param name="plan">The case.</param>
    /// <param name="task">The task.</param>
    /// <param name="bookings">Bookings of it.</param>
    /// <returns>What they do, hours at the usual pace.</returns>
    public static double Done(PlanCase plan, PlanTask task, IEnumerable<Booking> bookings) =>
        bookings.Sum(booking => booking.Hours / PaceOf(plan, task, booking));

    /// <param name="plan">The case.</param>
    /// <param name="task">The task.</param>
    /// <param name="crew">The crew that does the rest.</param>
    /// <param name="bookings">Bookings of it.</param>
    /// <returns>What they leave, hours of the crew; 0 or less where nothing is left.</returns>
    public static double Left(PlanCase plan, PlanTask task, PlanCrew crew, IEnumerable<Booking> bookings) =>
        (task.Hours - Done(plan, task, bookings)) * crew.PaceAt(task);

    /// <returns>Whether bookings do all of a task, but for what rounding leaves.</returns>
    public static bool IsWhole(PlanCase plan, PlanTask task, IEnumerable<Booking> bookings) =>
        bookings.Sum(booking => (booking.Hours + Tolerance) / PaceOf(plan, task, booking)) >= task.Hours;

    /// <returns>Whether bookings do more than all of a task, by more than rounding.</returns>
    public static bool IsTooMuch(PlanCase plan, PlanTask task, IEnumerable<Booking> bookings) =>
        bookings.Sum(booking => (booking.Hours - Tolerance) / PaceOf(plan, task, booking)) > task.Hours;

    private static double PaceOf(PlanCase plan, PlanTask task, Booking booking) =>
        plan.Crews.First(crew => crew.Id == booking.CrewId).PaceAt(task);
}
