namespace WorkWindows.Engine.Weather.Quality;

/// <summary>A year of a station whose readings of an element stand on the wrong day.</summary>
/// <param name="StationId">The station.</param>
/// <param name="Element">Minimum or maximum temperature.</param>
/// <param name="Year">The year.</param>
/// <param name="DaysLate">How many days after its own day a reading stands; negative when it stands before.</param>
public sealed record DayShift(string StationId, DailyElement Element, int Year, int DaysLate);
