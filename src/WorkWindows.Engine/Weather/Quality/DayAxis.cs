using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>Consecutive days with what the checks ask of each: its month and its place in the year.</summary>
internal sealed class DayAxis
{
    /// <summary>29 February has a place in every year, so that all years have the same days.</summary>
    public const int DaysOfYear = 366;

    private const int LeapYear = 2000;

    private static readonly int[] FirstOfMonth =
        [.. Enumerable.Range(1, 12).Select(month => new LocalDate(LeapYear, month, 1).DayOfYear - 1)];

    public DayAxis(LocalDate first, int count)
    {
        First = first;
        (Months, PlacesInYear) = (new byte[count], new short[count]);
        var day = 0;
        for (var start = first; day < count; start = start.PlusDays(1 - start.Day).PlusMonths(1))
        {
            var rest = start.Calendar.GetDaysInMonth(start.Year, start.Month) - start.Day + 1;
            for (var i = 0; i < rest && day < count; i++, day++)
            {
                Months[day] = (byte)(start.Month - 1);
                PlacesInYear[day] = (short)(FirstOfMonth[start.Month - 1] + start.Day - 1 + i);
            }
        }
    }

    public LocalDate First { get; }

    /// <summary>0 for January to 11 for December.</summary>
    public byte[] Months { get; }

    /// <summary>0 to 365.</summary>
    public short[] PlacesInYear { get; }
}
