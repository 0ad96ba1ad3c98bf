using NodaTime;

namespace WorkWindows.Engine.Evaluation;

/// <summary>A longest run of workable days (open or limited), both ends included.</summary>
public sealed record Window(LocalDate First, LocalDate Last);

/// <summary>A longest run of days of one state, both ends included.</summary>
public sealed record StateRun(DayState State, LocalDate First, LocalDate Last);
