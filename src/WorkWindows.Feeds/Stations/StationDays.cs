using System.Runtime.InteropServices;
using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Stations;

/// <summary>Gathers the values of one station in whatever order its file has them.</summary>
internal sealed class StationDays(FaultCollector faults)
{
    /// <summary>A key is a date and an element in one number; room for more elements than there are.</summary>
    private const int ElementsADay = 16;

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
    /// Takes one value in the unit of its element: the date, which exists, as the number yyyymmdd; the flags a blank
    /// when there is none.
    /// </summary>
    public void Add(
        int line, int yearMonthDay, GhcnElement element, int value, char measurementFlag, char qualityFlag)
    {
        if (measurementFlag == GhcnElements.PresumedZero)
            value = GhcnElements.Missing;
        var (lowest, highest, accepted) = element.Bounds();
        if (value != GhcnElements.Missing && qualityFlag == ' ' && (value < lowest || value > highest))
            faults.Add(line, Name(element), $"{value}", accepted);
        _keys.Add(yearMonthDay * ElementsADay + (int)element);
        _entries.Add(new(value, qualityFlag, line));
    }

    public StationRecord Build(int linesRead)
    {
        var keys = CollectionsMarshal.AsSpan(_keys);
        var entries = CollectionsMarshal.AsSpan(_entries);
        keys.Sort(entries);
        ReportDuplicates(keys, entries);
        var readings = new List<DailyReading>(keys.Length);
        for (var i = 0; i < keys.Length; i++)
        {
            if (entries[i].Value == GhcnElements.Missing)
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
            faults.Add(lines.Second, Name(ElementOf(keys[i])), Date(keys[i]).ToString("yyyy-MM-dd", null),
                $"each date and element once, and line {lines.First} has it already");
        }
    }

    private static DailyReading Reading(int key, Entry entry)
    {
        var (element, fileUnits) = ElementOf(key).Reading();
        return new(
            Date(key), element, entry.Value / fileUnits, entry.QualityFlag == ' ' ? null : entry.QualityFlag);
    }

    private static DailyReading StrongerUsable(DailyReading one, DailyReading other) =>
        (one.QualityFlag is null) != (other.QualityFlag is null)
            ? one.QualityFlag is null ? one : other
            : one.Value >= other.Value ? one : other;

    private static LocalDate Date(int key) => new(
        key / ElementsADay / 10_000, key / ElementsADay / 100 % 100, key / ElementsADay % 100);

    private static GhcnElement ElementOf(int key) => (GhcnElement)(key % ElementsADay);

    private static string Name(GhcnElement element) => element.ToString().ToUpperInvariant();

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);

    private readonly record struct Entry(int Value, char QualityFlag, int Line);
}
