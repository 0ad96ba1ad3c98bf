using NodaTime;

namespace WorkWindows.Engine.Evaluation;

/// <summary>A longest run of workable days (open or limited), both ends included.</summary>
public sealed record Window(LocalDate First, LocalDate Last);

/// <summary>A longest run of days of one state, both ends included.</summary>
public sealed record StateRun(DayState State, LocalDate First, LocalDate Last);

/// <summary>Where a task stands on a day: may it be done, until when, and when next.</summary>
/// <param name="Today">The state of the day.</param>
/// <param name="Current">The window that the day lies in, or null.</param>
/// <param name="Next">The next window that begins after the day and after the current window, or null.</param>
/// <param name="MayOpen">
/// The first later day that no rule closes but whose inputs are not all known, when it comes before the next window;
/// null otherwise. A forecast or a reading must decide it.
/// </param>
public sealed record Outlook(DayState Today, Window? Current, Window? Next, LocalDate? MayOpen);
