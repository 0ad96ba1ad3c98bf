using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// A lasting step in a station's temperatures that the stations around do not share: it was moved, or its sensor
/// changed.
/// </summary>
/// <param name="StationId">The station.</param>
/// <param name="Element">Minimum or maximum temperature.</param>
/// <param name="From">The first day of the month from which on the new level holds, give or take half a year.</param>
/// <param name="SizeC">How much warmer it is from then on than before, against the stations around, °C.</param>
public sealed record StationStep(string StationId, DailyElement Element, LocalDate From, double SizeC);
