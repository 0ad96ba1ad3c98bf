using System.Runtime.InteropServices;
using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Stations;

/// <summary>Gathers the values of one station in whatever order its file has them.</summary>
internal sealed class StationDays(FaultCollector faults)
{
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
    /// Takes one value: the date, which exists, as the number yyyymmdd; the quality flag a blank when it passed.
    /// </summary>
    public void Add(int line, int yearMonthDay, GhcnElement element, int tenths, char qualityFlag)
    {
        var (lowest, highest, accepted) = element.Bounds();
        if (tenths != GhcnElements.Missing && qualityFlag == ' ' && (tenths < lowest || tenths > highest))
            faults.Add(line, Name(element), $"{tenths}", accepted);
        _keys.Add(yearMonthDay * 8 + (int)element);
        _entries.Add(new(tenths, qualityFlag, line));
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
            if (entries[i].Tenths == GhcnElements.Missing)
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
            faults.Add(lines.Second, Name((GhcnElement)(keys[i] % 8)), Date(keys[i]).ToString("yyyy-MM-dd", null),
                $"each date and element once, and line {lines.First} has it already");
        }
    }

    private static DailyReading Reading(int key, Entry entry) => new(
        Date(key),
        (GhcnElement)(key % 8) switch
        {
            GhcnElement.Tmin => DailyElement.MinTemperatureC,
            GhcnElement.Tmax => DailyElement.MaxTemperatureC,
            GhcnElement.Wsf2 => DailyElement.WindMps,
            GhcnElement.Wsf5 or GhcnElement.Wsfg => DailyElement.GustMps,
        },
        entry.Tenths / 10.0,
        entry.QualityFlag == ' ' ? null : entry.QualityFlag);

    private static DailyReading StrongerUsable(DailyReading one, DailyReading other) =>
        (one.QualityFlag is null) != (other.QualityFlag is null)
            ? one.QualityFlag is null ? one : other
            : one.Value >= other.Value ? one : other;

    private static LocalDate Date(int key) => new(key / 8 / 10_000, key / 8 / 100 % 100, key / 8 % 100);

    private static string Name(GhcnElement element) => element.ToString().ToUpperInvariant();

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);

    private readonly record struct Entry(int Tenths, char QualityFlag, int Line);
}
