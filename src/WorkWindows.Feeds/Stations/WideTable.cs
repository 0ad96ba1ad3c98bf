using System.Globalization;
using System.Text;
using NodaTime.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// A station's record with a column or member for each element, as the order desk and the data services of NOAA give
/// it: the cell <c>TMAX</c> with the value and <c>TMAX_ATTRIBUTES</c> with the flags <c>M,Q,S</c> and the hour.
/// </summary>
internal sealed class WideTable(StationUnits units, StationDays days, FaultCollector faults)
{
    public const string Attributes = "_ATTRIBUTES";

    private int _line;
    private int _yearMonthDay;

    public static GhcnElement? Find(string name) => GhcnElements.Find(Encoding.Latin1.GetBytes(name));

    /// <returns>Whether the row has a station and a date, so that its cells can be read.</returns>
    public bool TryStart(int line, string? station, string? date)
    {
        _line = line;
        if (station is null || !StationIds.IsId(station))
        {
            faults.Add(line, "STATION", station ?? "absent", StationIds.Accepted);
            return false;
        }
        var parsed = LocalDatePattern.Iso.Parse(date ?? "");
        if (!parsed.Success || parsed.Value.Year is < 1700 or > 2200)
        {
            faults.Add(line, "DATE", date ?? "absent", "an existing date as yyyy-MM-dd, 1700 to 2200");
            return false;
        }
        _yearMonthDay = (parsed.Value.Year * 100 + parsed.Value.Month) * 100 + parsed.Value.Day;
        days.AddLine(line, Encoding.ASCII.GetBytes(station), isUsed: true);
        return true;
    }

    /// <summary>Takes a cell of the row that was started; an empty one and <c>NA</c> are no value.</summary>
    public void AddCell(GhcnElement element, string text, string attributes)
    {
        var value = text.Trim();
        if (value is "" or "NA")
            return;
        var unit = element.In(units);
        if (!double.TryParse(
            value, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out var number) || !double.IsFinite(number))
        {
            faults.Add(_line, element.Code(), text, $"{unit.Accepted(element.Reading())}, or nothing");
            return;
        }
        var flags = attributes.Split(',');
        if (Flag(flags, 0) is { } measurement && Flag(flags, 1) is { } quality)
            days.Add(_line, _yearMonthDay, element, number, unit, measurement, quality);
        else
            faults.Add(_line, element.Code() + Attributes, attributes, "flags as M,Q,S, each nothing or one letter");
    }

    private static char? Flag(string[] flags, int index) => flags.ElementAtOrDefault(index)?.Trim() switch
    {
        null or "" => ' ',
        [var flag] => flag,
        _ => null,
    };
}
