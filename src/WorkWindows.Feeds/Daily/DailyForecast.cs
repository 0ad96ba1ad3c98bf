using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Daily;

/// <summary>A forecast by local day.</summary>
/// <param name="IssuedAt">When the service made it.</param>
/// <param name="Readings">
/// Ascending by date and element, each pair once. A day that is not wholly covered, or whose values were rejected, is
/// absent.
/// </param>
/// <param name="RestOfDay">
/// The highest wind, gust and chance of thunder and the lowest humidity of the hours that are left of a day that had
/// begun when the forecast was made: the day's own extreme is at least as far out. Rain has none: what fell before is
/// not told.
/// </param>
/// <param name="Faults">The values that were rejected.</param>
public sealed record DailyForecast(
    Instant IssuedAt,
    ImmutableArray<DailyReading> Readings,
    ImmutableArray<DailyReading> RestOfDay,
    FaultReport Faults);
