using System.Buffers.Text;
using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// The fixed-width form of GHCN-Daily: a line holds one element of one month, 31 groups of eight characters after a
/// heading of 21.
/// </summary>
/// <remarks>Source: NOAA NCEI, README for GHCN-Daily version 3.26, section III.</remarks>
internal static class DlyReader
{
    private const int HeadingLength = 21;
    private const int GroupLength = 8;
    private const int LineLength = HeadingLength + 31 * GroupLength;

    /// <summary>Blanks at the end may have been trimmed: the flags of day 31, but never its value.</summary>
    private const int ShortestLine = LineLength - 3;

    public static int Read(StationLines lines, StationDays days, FaultCollector faults)
    {
        Span<byte> padded = stackalloc byte[LineLength];
        while (lines.MoveNext())
        {
            var line = lines.Current;
            var isCut = line.Length < ShortestLine || (!lines.IsEnded && line.Length < LineLength);
            if (isCut || line.Length > LineLength)
            {
                faults.Add(lines.Number, "line", $"{line.Length} characters",
                    isCut ? $"{LineLength} characters: the line is cut" : $"{LineLength} characters");
                continue;
            }
            padded.Fill((byte)' ');
            line.CopyTo(padded);
            ReadLine(lines.Number, padded, days, faults);
        }
        return lines.Number;
    }

    private static void ReadLine(int number, ReadOnlySpan<byte> line, StationDays days, FaultCollector faults)
    {
        if (!StationIds.IsId(line[..StationIds.Length]))
        {
            faults.Add(number, "station", Text(line[..StationIds.Length]), StationIds.Accepted);
            return;
        }
        if (!TryNumber(line[11..15], out var year) || year is < 1700 or > 2200)
        {
            faults.Add(number, "year", Text(line[11..15]), "four digits, 1700 to 2200");
            return;
        }
        if (!TryNumber(line[15..17], out var month) || month is < 1 or > 12)
        {
            faults.Add(number, "month", Text(line[15..17]), "two digits, 01 to 12");
            return;
        }
        if (!GhcnElements.IsCode(line[17..21]))
        {
            faults.Add(number, "element", Text(line[17..21]), "four capital letters or digits, such as TMAX");
            return;
        }
        var element = GhcnElements.Find(line[17..21]);
        days.AddLine(number, line[..StationIds.Length], element is not null);
        if (element is { } used)
            ReadDays(number, year, month, used, line[HeadingLength..], days, faults);
    }

    private static void ReadDays(
        int number, int year, int month, GhcnElement element, ReadOnlySpan<byte> groups, StationDays days,
        FaultCollector faults)
    {
        var daysInMonth = DateTime.DaysInMonth(year, month);
        var unit = element.In(StationUnits.Tenths);
        for (var day = 1; day <= 31; day++)
        {
            var group = groups.Slice((day - 1) * GroupLength, GroupLength);
            if (!TryNumber(group[..5], out var value))
                faults.Add(number, $"value of day {day}", Text(group[..5]), "a whole number in five columns");
            else if (day <= daysInMonth)
                days.Add(
                    number, (year * 100 + month) * 100 + day, element, value, unit, (char)group[5], (char)group[6]);
            else if (value != GhcnElements.Missing)
                faults.Add(number, $"value of day {day}", $"{value}",
                    $"-9999: {year}-{month:00} has {daysInMonth} days");
        }
    }

    private static bool TryNumber(ReadOnlySpan<byte> field, out int value)
    {
        var digits = field.TrimStart((byte)' ');
        return Utf8Parser.TryParse(digits, out value, out var consumed) && consumed == digits.Length;
    }

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);
}
