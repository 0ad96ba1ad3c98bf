using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// The heat of each day of a record, a row of 366 calendar days a year; NaN where the record has none.
/// </summary>
internal sealed class HeatTable
{
    private const int Slots = 366;
    private const int LeapDaySlot = 59;

    private readonly int firstYear;
    private readonly double[][] rows;

    public HeatTable(DailySeries? series, ThermalTime model)
    {
        if (series?[DailyElement.MinTemperatureC] is not { } min || series[DailyElement.MaxTemperatureC] is not { } max)
        {
            rows = [];
            return;
        }
        var first = LocalDate.Max(min.First, max.First);
        var last = LocalDate.Min(min.Last, max.Last);
        firstYear = first.Year;
        rows = new double[Math.Max(0, last.Year - firstYear + 1)][];
        for (var year = firstYear; year < firstYear + rows.Length; year++)
            rows[year - firstYear] = Row(year, min, max, model);
        LastDay = FindLastDay();
    }

    /// <summary>The years that the record touches, ascending.</summary>
    public IEnumerable<int> Years => Enumerable.Range(firstYear, rows.Length);

    /// <summary>The last day that has a value, or null when none has.</summary>
    public LocalDate? LastDay { get; }

    /// <summary>Where a date stands in a row; 29 February has a place in every year.</summary>
    public static int SlotOf(int month, int day) => new LocalDate(2000, month, day).DayOfYear - 1;

    /// <summary>The date of a place in a row, or null for 29 February of a common year.</summary>
    public static LocalDate? DateOf(int year, int slot)
    {
        var isLeap = CalendarSystem.Iso.IsLeapYear(year);
        if (slot == LeapDaySlot && !isLeap)
            return null;
        return new LocalDate(year, 1, 1).PlusDays(isLeap || slot < LeapDaySlot ? slot : slot - 1);
    }

    public double this[int year, int slot] =>
        year >= firstYear && year - firstYear < rows.Length ? rows[year - firstYear][slot] : double.NaN;

    /// <summary>The mean heat of a calendar day over the years that have it, and their number.</summary>
    public (double MeanHeat, int Years) Normal(int slot)
    {
        // Too few years have a 29 February of their own.
        var usual = slot == LeapDaySlot ? slot - 1 : slot;
        var (sum, years) = (0.0, 0);
        foreach (var row in rows)
        {
            if (double.IsNaN(row[usual]))
                continue;
            sum += row[usual];
            years++;
        }
        return (sum / years, years);
    }

    private static double[] Row(int year, DailyColumn min, DailyColumn max, ThermalTime model)
    {
        var days = CalendarSystem.Iso.GetDaysInYear(year);
        var (mins, maxes) = (new double[days], new double[days]);
        min.CopyTo(new(new(year, 1, 1), days), mins);
        max.CopyTo(new(new(year, 1, 1), days), maxes);
        var row = new double[Slots];
        row[LeapDaySlot] = double.NaN;
        for (var day = 0; day < days; day++)
        {
            var slot = days == Slots || day < LeapDaySlot ? day : day + 1;
            row[slot] = DegreeDays.SimpleAverage(mins[day], maxes[day], model.BaseC);
        }
        return row;
    }

    private LocalDate? FindLastDay()
    {
        for (var year = rows.Length - 1; year >= 0; year--)
        {
            for (var slot = Slots - 1; slot >= 0; slot--)
            {
                if (!double.IsNaN(rows[year][slot]))
                    return DateOf(firstYear + year, slot);
            }
        }
        return null;
    }
}
