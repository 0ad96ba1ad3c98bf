using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Quality;

/// <summary>Known faults put into a real record, and how many of them the checks find.</summary>
internal static class Faults
{
    /// <summary>The share of the changed readings that are rejected, 0 to 1.</summary>
    public static double HitRate(List<DailyReading> record, Func<DailyReading, DailyReading> change)
    {
        var changed = record.Select(change).ToList();
        var rejected = QualityControl.Check(changed, readsUsUnits: true).Rejected
            .Select(reading => (reading.Date, reading.Element, reading.Value)).ToHashSet();
        var faults = record.Zip(changed).Where(pair => pair.First != pair.Second).Select(pair => pair.Second).ToList();
        Assert.NotEmpty(faults);
        return (double)faults.Count(fault => rejected.Contains((fault.Date, fault.Element, fault.Value))) / faults.Count;
    }

    /// <summary>About every fortieth day of all seasons, never two in a row.</summary>
    public static bool IsPicked(LocalDate date) => Period.DaysBetween(new(1900, 1, 1), date) % 41 == 0;

    public static bool IsMonth(LocalDate date, int year, int month) => (date.Year, date.Month) == (year, month);
}
