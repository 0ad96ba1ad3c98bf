using NodaTime;

namespace WorkWindows.Service.Crews;

/// <summary>Work that somebody gives to a crew by hand.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="CrewId">The crew.</param>
/// <param name="Day">The day.</param>
/// <param name="Hours">Hours of the crew at the work; null for what is left of it, a working day at most.</param>
public sealed record BookingForm(Guid? TaskId, Guid? CrewId, LocalDate? Day, decimal? Hours);

/// <summary>Where a booking is to go.</summary>
public sealed record MoveForm(Guid? CrewId, LocalDate? Day);
