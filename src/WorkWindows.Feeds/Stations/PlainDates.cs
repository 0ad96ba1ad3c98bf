using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>
/// The days of a file of one's own: <c>date</c> has them, <c>dayStart</c> has the stamp of the midnight at which they
/// begin.
/// </summary>
/// <remarks>
/// A logger that keeps another offset than its reader stamps the midnight of half the year an hour off: at 23:00 the
/// day before, or at 1:00. Such a stamp is moved to the midnight that it is nearest to.
/// </remarks>
internal sealed class PlainDates
{
    private const string Us = " [M/d/yyyy]";

    private static readonly LocalDatePattern UsDate = LocalDatePattern.CreateWithInvariantCulture("M/d/uuuu");
    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    private readonly LocalDatePattern _pattern;
    private readonly bool _hasTimes;

    private PlainDates(string heading)
    {
        _pattern = heading.EndsWith(Us, StringComparison.Ordinal) ? UsDate : LocalDatePattern.Iso;
        _hasTimes = heading.StartsWith("dayStart", StringComparison.Ordinal);
        var form = _pattern == UsDate ? "M/d/yyyy" : "yyyy-MM-dd";
        Accepted = _hasTimes
            ? $"a date as {form}, or with a time from 23:00 the day before to 01:00, 1700 to 2200"
            : $"an existing date as {form} without a time, 1700 to 2200 (stamps of midnight go into a column dayStart)";
    }

    public string Accepted { get; }

    public static bool IsHeading(string name) =>
        name is "date" or "date" + Us or "dayStart" or "dayStart" + Us;

    public static PlainDates Reader(string heading) => new(heading);

    /// <returns>Null if the text is no such day.</returns>
    public LocalDate? Date(string text)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        var (datePart, timePart) = space < 0 ? (text, "0:00") : (text[..space], text[(space + 1)..]);
        var (date, time) = (_pattern.Parse(datePart), Time.Parse(timePart));
        if (!date.Success || !time.Success || (space >= 0 && !_hasTimes))
            return null;
        return time.Value >= new LocalTime(23, 0) ? date.Value.PlusDays(1)
            : time.Value <= new LocalTime(1, 0) ? date.Value
            : null;
    }
}
