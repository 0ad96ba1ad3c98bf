using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Daily;

/// <summary>Gathers the values of one place from a reply, in whatever order they come.</summary>
internal sealed class ReadingCollector(FaultCollector faults)
{
    private readonly SortedDictionary<(LocalDate, DailyElement), DailyReading> _readings = [];

    /// <summary>Given twice with values that differ: nobody knows which one is right.</summary>
    private readonly HashSet<(LocalDate, DailyElement)> _doubted = [];

    /// <summary>Takes a value in the unit of its source. One that no weather has is a fault.</summary>
    public void Add(
        string field, LocalDate date, DailyElement element, double value, ElementUnit unit, char? qualityFlag = null)
    {
        var reading = unit.ToReading(value);
        if (qualityFlag is null && !ReadingBounds.Hold(element, reading))
            faults.Add(null, field, $"{value}", unit.Accepted(element));
        else if (!_readings.TryAdd((date, element), new(date, element, reading, qualityFlag)))
        {
            faults.Add(null, field, $"{date:uuuu-MM-dd}", "each date once");
            if (_readings[(date, element)] != new DailyReading(date, element, reading, qualityFlag))
                _doubted.Add((date, element));
        }
    }

    public ImmutableArray<DailyReading> Within(DateInterval days) =>
    [
        .. _readings.Values.Where(reading =>
            days.Contains(reading.Date) && !_doubted.Contains((reading.Date, reading.Element))),
    ];
}
