using System.Runtime.InteropServices;
using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds months that were copied: the same value on each day as in another month of the record. Which of them is the
/// true one cannot be told, so none is used. A year that was copied is twelve such months.
/// </summary>
internal static class RepeatedMonths
{
    /// <summary>A month with fewer values says too little.</summary>
    public const int MinDays = 20;

    /// <summary>Dry months are alike without having been copied.</summary>
    public const int MinDistinct = 5;

    /// <summary>As many days as every month has.</summary>
    private const int ComparedDays = 28;

    public static void Check(CheckedColumn column)
    {
        if (column.Element is not (DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC
            or DailyElement.PrecipitationMm))
        {
            return;
        }
        var copied = Months(column).Where(month => IsTelling(column, month))
            .GroupBy(month => Key(column, month), StringComparer.Ordinal)
            .Where(alike => alike.Count() > 1)
            .SelectMany(alike => alike).ToList();
        foreach (var (first, count) in copied)
        {
            for (var day = first; day < first + count; day++)
                column.Reject(day, RejectionReason.RepeatedMonth);
        }
    }

    private static IEnumerable<(int First, int Count)> Months(CheckedColumn column)
    {
        for (var first = 0; first < column.Values.Length;)
        {
            var date = column.First.PlusDays(first);
            var rest = CalendarSystem.Iso.GetDaysInMonth(date.Year, date.Month) - date.Day + 1;
            var count = Math.Min(rest, column.Values.Length - first);
            yield return (first, count);
            first += count;
        }
    }

    private static bool IsTelling(CheckedColumn column, (int First, int Count) month)
    {
        var known = column.Values.Skip(month.First).Take(month.Count).Where(value => !double.IsNaN(value)).ToList();
        return known.Count >= MinDays && known.Distinct().Count() >= MinDistinct;
    }

    /// <summary>The values of the days that every month has, so that a month may be found in a longer one.</summary>
    private static string Key(CheckedColumn column, (int First, int Count) month)
    {
        var values = column.Values.AsSpan(month.First, Math.Min(month.Count, ComparedDays));
        return new(MemoryMarshal.Cast<double, char>(values));
    }
}
