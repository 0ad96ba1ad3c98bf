using System.Collections.Immutable;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>A station's record, parted into what may be used and what may not.</summary>
/// <param name="Usable">The values that may be used; NaN on a day whose value was rejected.</param>
/// <param name="Rejected">Every reading that may not, by element, then by date.</param>
public sealed record CheckedSeries(DailySeries Usable, ImmutableArray<RejectedReading> Rejected);
