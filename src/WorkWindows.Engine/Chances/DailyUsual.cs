using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>What a temperature usually is on each calendar day of a place, and how long an unusual one lasts.</summary>
/// <remarks>Source: docs/rules/chances.md.</remarks>
internal sealed class DailyUsual
{
    /// <summary>Days on each side of a calendar day whose values, of all years, make its mean.</summary>
    private const int HalfWindowDays = 10;

    private const int Slots = 366;
    private const int Months = 12;

    private readonly double[] meanC;
    private readonly double[] keptPerDay;

    private DailyUsual(double[] meanC, double[] keptPerDay) => (this.meanC, this.keptPerDay) = (meanC, keptPerDay);

    public static DailyUsual Of(DailyColumn tempC)
    {
        var means = Means(tempC);
        return new(means, Persistence(tempC, means));
    }

    /// <summary>The mean of a calendar day over all years, °C; NaN when none has a value near it.</summary>
    public double MeanC(LocalDate date) => meanC[SlotOf(date)];

    /// <summary>
    /// The share of a departure from the mean that is left on the next day, 0 to 1: the correlation of a day's with the
    /// next day's, in the month of the date and the two beside it, over all years.
    /// </summary>
    public double KeptPerDay(LocalDate date) => keptPerDay[date.Month - 1];

    private static double[] Means(DailyColumn tempC)
    {
        var (sums, counts) = (new double[Slots], new int[Slots]);
        for (var day = 0; day < tempC.Values.Length; day++)
        {
            if (double.IsNaN(tempC.Values[day]))
                continue;
            var slot = SlotOf(tempC.First.PlusDays(day));
            sums[slot] += tempC.Values[day];
            counts[slot]++;
        }
        return [.. Enumerable.Range(0, Slots).Select(slot => Around(sums, slot) / Around(counts, slot))];

        double Around<T>(T[] slots, int slot) where T : IConvertible =>
            Enumerable.Range(slot - HalfWindowDays + Slots, 2 * HalfWindowDays + 1)
                .Sum(near => slots[near % Slots].ToDouble(null));
    }

    private static double[] Persistence(DailyColumn tempC, double[] means)
    {
        var (products, squares) = (new double[Months], new double[Months]);
        var before = double.NaN;
        for (var day = 0; day < tempC.Values.Length; day++)
        {
            var date = tempC.First.PlusDays(day);
            var departure = tempC.Values[day] - means[SlotOf(date)];
            if (!double.IsNaN(departure + before))
            {
                products[date.Month - 1] += departure * before;
                squares[date.Month - 1] += (departure * departure + before * before) / 2;
            }
            before = departure;
        }
        return
        [
            .. Enumerable.Range(0, Months).Select(month =>
                Season(squares, month) is > 0 and var square ? Math.Clamp(Season(products, month) / square, 0, 1) : 0),
        ];

        double Season(double[] months, int month) =>
            months[(month + Months - 1) % Months] + months[month] + months[(month + 1) % Months];
    }

    // 29 February has a place of its own, so that no other day moves in leap years.
    private static int SlotOf(LocalDate date) => new LocalDate(2000, date.Month, date.Day).DayOfYear - 1;
}
