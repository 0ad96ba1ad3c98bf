using System.Collections.Immutable;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Stations;

/// <summary>What one station file holds of the elements that are used.</summary>
/// <param name="StationId">The eleven-character GHCN-Daily identifier.</param>
/// <param name="Readings">Ascending by date and element, each pair once; days without a value are absent.</param>
/// <param name="LinesRead">Lines of the file.</param>
/// <param name="LinesUsed">Lines that hold an element that is used.</param>
public sealed record StationRecord(
    string StationId,
    ImmutableArray<DailyReading> Readings,
    int LinesRead,
    int LinesUsed);
