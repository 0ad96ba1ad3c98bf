using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

/// <summary>Made-up daily records.</summary>
internal static class SteadyRecord
{
    /// <summary>A minimum and a maximum a day, 5 °C below and above the mean of the day.</summary>
    public static IEnumerable<DailyReading> Of(DaySpan days, Func<LocalDate, double> meanC)
    {
        for (var day = 0; day < days.Count; day++)
        {
            yield return new(days[day], DailyElement.MinTemperatureC, meanC(days[day]) - 5, null);
            yield return new(days[day], DailyElement.MaxTemperatureC, meanC(days[day]) + 5, null);
        }
    }

    /// <summary>The same mean on every day of the years.</summary>
    public static IEnumerable<DailyReading> OfYears(int first, int last, double meanC) =>
        Of(DaySpan.Between(new(first, 1, 1), new(last, 12, 31)), _ => meanC);
}
