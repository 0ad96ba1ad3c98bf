using System.Buffers.Text;
using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// Station files with tabs and without a heading: the date as YYYYMMDD, maximum, minimum (tenths of °C), precipitation
/// (tenths of mm), -9999 for missing. They do not name their station.
/// </summary>
internal static class TabsReader
{
    private const string Form = "YYYYMMDD, maximum, minimum and precipitation, with tabs between them";

    private static readonly GhcnElement[] Elements = [GhcnElement.Tmax, GhcnElement.Tmin, GhcnElement.Prcp];

    public static int Read(StationLines lines, string? stationId, StationDays days, FaultCollector faults)
    {
        if (stationId is null)
        {
            faults.Add(1, "station", "not said", "say which station the file is of; it does not");
            return 0;
        }
        var station = Encoding.ASCII.GetBytes(stationId);
        Span<Range> fields = stackalloc Range[Elements.Length + 2];
        while (lines.MoveNext())
        {
            var line = lines.Current;
            var count = Split(line, fields);
            var date = count > 0 ? line[fields[0]] : default;
            if (count != Elements.Length + 1)
            {
                faults.Add(lines.Number, "line", Encoding.Latin1.GetString(line), Form);
            }
            else if (StationCsvReader.Date(date) is { } yearMonthDay)
            {
                days.AddLine(lines.Number, station, isUsed: true);
                ReadValues(lines.Number, line, fields[1..], yearMonthDay, days, faults);
            }
            else
            {
                faults.Add(lines.Number, "date", Encoding.Latin1.GetString(date), StationCsvReader.DateForm);
            }
        }
        return lines.Number;
    }

    private static void ReadValues(
        int number, ReadOnlySpan<byte> line, ReadOnlySpan<Range> fields, int yearMonthDay, StationDays days,
        FaultCollector faults)
    {
        foreach (var (index, element) in Elements.Index())
        {
            var field = line[fields[index]].TrimStart((byte)' ');
            if (Utf8Parser.TryParse(field, out int value, out var consumed) && consumed == field.Length)
            {
                days.Add(number, yearMonthDay, element, value, element.In(StationUnits.Tenths), ' ', ' ');
            }
            else
            {
                faults.Add(
                    number, element.Code(), Encoding.Latin1.GetString(field), StationCsvReader.Accepted(element));
            }
        }
    }

    private static int Split(ReadOnlySpan<byte> line, Span<Range> ranges)
    {
        var count = 0;
        foreach (var range in line.Split((byte)'\t'))
        {
            if (count == ranges.Length)
                break;
            ranges[count++] = range;
        }
        return count;
    }
}
