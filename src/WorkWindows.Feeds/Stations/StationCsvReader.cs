using System.Buffers.Text;
using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// The by-station and by-year forms of GHCN-Daily: a line holds one element of one day as
/// <c>ID,YYYYMMDD,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBS-TIME</c>, without a heading. By year, all stations are in it.
/// </summary>
/// <remarks>Source: NOAA NCEI, README for the by-station CSV files of GHCN-Daily.</remarks>
internal static class StationCsvReader
{
    private const string Form = "ID,YYYYMMDD,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBS-TIME";

    public const string DateForm = "an existing date as YYYYMMDD, 1700 to 2200";

    /// <summary>Eight, of which the last (the hour of observation) may be absent.</summary>
    private const int Fields = 8;

    /// <param name="lines">The file.</param>
    /// <param name="wanted">Whose lines count, where the file has several stations; else empty.</param>
    /// <param name="days">Takes the values.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public static int Read(
        StationLines lines, ReadOnlySpan<byte> wanted, StationDays days, FaultCollector faults)
    {
        Span<Range> ranges = stackalloc Range[Fields + 1];
        while (lines.MoveNext())
        {
            var line = lines.Current;
            var count = Split(line, ranges);
            if (count is not (Fields or Fields - 1))
            {
                var cut = lines.IsEnded ? "" : "; the file ends inside this line";
                faults.Add(lines.Number, "line", Text(line), $"{Form}: seven or eight fields{cut}");
            }
            else if (wanted.IsEmpty || line[ranges[0]].SequenceEqual(wanted))
            {
                ReadLine(lines.Number, line, ranges, days, faults);
            }
        }
        return lines.Number;
    }

    private static void ReadLine(
        int number, ReadOnlySpan<byte> line, ReadOnlySpan<Range> ranges, StationDays days, FaultCollector faults)
    {
        if (!StationIds.IsId(line[ranges[0]]))
        {
            faults.Add(number, "station", Text(line[ranges[0]]), StationIds.Accepted);
            return;
        }
        var date = line[ranges[1]];
        if (Date(date) is not { } yearMonthDay)
        {
            faults.Add(number, "date", Text(date), DateForm);
            return;
        }
        var code = line[ranges[2]];
        if (!GhcnElements.IsCode(code))
        {
            faults.Add(number, "element", Text(code), "four capital letters or digits, such as TMAX");
            return;
        }
        var element = GhcnElements.Find(code);
        days.AddLine(number, line[ranges[0]], element is not null);
        if (element is not { } used)
            return;
        var measurement = line[ranges[4]];
        var quality = line[ranges[5]];
        if (!TryNumber(line[ranges[3]], out var value))
            faults.Add(number, Text(code), Text(line[ranges[3]]), Accepted(used));
        else if (measurement.Length > 1)
            faults.Add(number, "measurement flag", Text(measurement), "nothing or one letter");
        else if (quality.Length > 1)
            faults.Add(number, "quality flag", Text(quality), "nothing or one letter");
        else
            days.Add(number, yearMonthDay, used, value, used.In(StationUnits.Tenths), Flag(measurement), Flag(quality));
    }

    /// <returns>The number yyyymmdd of a day that exists, or null.</returns>
    public static int? Date(ReadOnlySpan<byte> field) =>
        field.Length == 8 && TryNumber(field, out var yearMonthDay) && Exists(yearMonthDay) ? yearMonthDay : null;

    public static string Accepted(GhcnElement element) =>
        $"{element.In(StationUnits.Tenths).Accepted(element.Reading())}, or -9999 for missing";

    private static char Flag(ReadOnlySpan<byte> field) => field.IsEmpty ? ' ' : (char)field[0];

    private static bool Exists(int yearMonthDay)
    {
        var (year, month, day) = (yearMonthDay / 10_000, yearMonthDay / 100 % 100, yearMonthDay % 100);
        return year is >= 1700 and <= 2200 && month is >= 1 and <= 12
            && day >= 1 && day <= DateTime.DaysInMonth(year, month);
    }

    private static int Split(ReadOnlySpan<byte> line, Span<Range> ranges)
    {
        var count = 0;
        foreach (var range in line.Split((byte)','))
        {
            if (count == ranges.Length)
                break;
            ranges[count++] = range;
        }
        return count;
    }

    private static bool TryNumber(ReadOnlySpan<byte> field, out int value) =>
        Utf8Parser.TryParse(field, out value, out var consumed) && consumed == field.Length;

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);
}
