using System.Runtime.InteropServices;
using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Stations;

/// <summary>Gathers the values of one station in whatever order its file has them.</summary>
/// <param name="faults">Takes what is wrong.</param>
/// <param name="today">The last day that can have been observed; null takes all days.</param>
internal sealed class StationDays(FaultCollector faults, LocalDate? today = null)
{
    /// <summary>A key is a date and an element in one number; room for more elements than there are.</summary>
    private const int ElementsADay = 16;

    private readonly int _today = today is { } day ? (day.Year * 100 + day.Month) * 100 + day.Day : int.MaxValue;
    private readonly List<int> _keys = [];
    private readonly List<Entry> _entries = [];
    private string? _stationId;
    private int _linesUsed;

    public void AddLine(int line, ReadOnlySpan<byte> stationId, bool isUsed)
    {
        _stationId ??= Text(stationId);
        if (!Ascii.Equals(stationId, _stationId))
            faults.Add(line, "station", Text(stationId), $"one station a file, and this one began with {_stationId}");
        if (isUsed)
            _linesUsed++;
    }

    /// <summary>
    /// Takes one value: the date, which exists, as the number yyyymmdd; the flags a blank when there is none. What no
    /// weather has, or a day to come, is a fault and is not kept.
    /// </summary>
    public void Add(
        int line, int yearMonthDay, GhcnElement element, double value, ElementUnit unit, char measurementFlag,
        char qualityFlag, string? field = null)
    {
        // A second line for the day is a fault even where one of the two has nothing to say.
        var isMissing = measurementFlag == GhcnElements.PresumedZero || value == GhcnElements.Missing;
        var reading = isMissing ? double.NaN : unit.ToReading(value);
        if (!isMissing && yearMonthDay > _today)
        {
            faults.Add(
                line, "date", $"{DateOf(yearMonthDay):uuuu-MM-dd}",
                $"a day up to {today:uuuu-MM-dd}, which is today where the station is");
            return;
        }
        if (!isMissing && qualityFlag == ' ' && !ReadingBounds.Hold(element.Reading(), reading))
        {
            faults.Add(line, field ?? element.Code(), $"{value}",
                $"{unit.Accepted(element.Reading())}, or -9999 for missing");
            return;
        }
        _keys.Add(yearMonthDay * ElementsADay + (int)element);
        _entries.Add(new(reading, qualityFlag, line));
    }

    /// <summary>What was gathered; a day and element that came twice is a fault and is left out.</summary>
    public StationRecord Build(int linesRead)
    {
        var keys = CollectionsMarshal.AsSpan(_keys);
        var entries = CollectionsMarshal.AsSpan(_entries);
        keys.Sort(entries);
        ReportDuplicates(keys, entries);
        var readings = new List<DailyReading>(keys.Length);
        for (var i = 0; i < keys.Length; i++)
        {
            if (double.IsNaN(entries[i].Reading) || IsDuplicate(keys, i))
                continue;
            var reading = Reading(keys[i], entries[i]);
            if (reading.Element == DailyElement.GustMps && readings is [.., var before]
                && (before.Date, before.Element) == (reading.Date, reading.Element))
                readings[^1] = StrongerUsable(before, reading);
            else
                readings.Add(reading);
        }
        return new(_stationId ?? "", [.. readings], linesRead, _linesUsed);
    }

    private static bool IsDuplicate(ReadOnlySpan<int> keys, int i) =>
        (i > 0 && keys[i - 1] == keys[i]) || (i + 1 < keys.Length && keys[i + 1] == keys[i]);

    private void ReportDuplicates(ReadOnlySpan<int> keys, ReadOnlySpan<Entry> entries)
    {
        var reported = (0, 0);
        for (var i = 1; i < keys.Length; i++)
        {
            if (keys[i] != keys[i - 1])
                continue;
            var (one, other) = (entries[i - 1].Line, entries[i].Line);
            var lines = (First: Math.Min(one, other), Second: Math.Max(one, other));
            // A repeated line of the fixed form repeats up to 31 days: one fault says it.
            if (lines == reported)
                continue;
            reported = lines;
            faults.Add(lines.Second, ElementOf(keys[i]).Code(), Date(keys[i]).ToString("yyyy-MM-dd", null),
                $"each date and element once, and line {lines.First} has it already");
        }
    }

    private static DailyReading Reading(int key, Entry entry) => new(
        Date(key), ElementOf(key).Reading(), entry.Reading, entry.QualityFlag == ' ' ? null : entry.QualityFlag);

    private static DailyReading StrongerUsable(DailyReading one, DailyReading other) =>
        (one.QualityFlag is null) != (other.QualityFlag is null)
            ? one.QualityFlag is null ? one : other
            : one.Value >= other.Value ? one : other;

    private static LocalDate Date(int key) => DateOf(key / ElementsADay);

    private static LocalDate DateOf(int yearMonthDay) => new(
        yearMonthDay / 10_000, yearMonthDay / 100 % 100, yearMonthDay % 100);

    private static GhcnElement ElementOf(int key) => (GhcnElement)(key % ElementsADay);

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);

    /// <param name="Reading">In the unit of the element; NaN where the file says that there is none.</param>
    /// <param name="QualityFlag">A blank for none.</param>
    /// <param name="Line">Where it stands.</param>
    private readonly record struct Entry(double Reading, char QualityFlag, int Line);
}
