namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>
/// How much warmer each station of a group is than each other one, by month, from the days that both have.
/// </summary>
internal sealed class MonthlyOffsets
{
    /// <summary>Two months of days; a month with fewer in common takes the mean of all months.</summary>
    public const int MinDays = 60;

    private const int Months = 12;

    private readonly double[,][] offsets;

    private MonthlyOffsets(double[,][] offsets) => this.offsets = offsets;

    /// <summary>
    /// What to add to a value of one station for another in a month, 0 to 11, °C; NaN without enough days in common.
    /// </summary>
    public double Of(int wanted, int known, int month) => offsets[wanted, known][month];

    public static MonthlyOffsets Learn(double[][] values, byte[] months)
    {
        var offsets = new double[values.Length, values.Length][];
        for (var one = 0; one < values.Length; one++)
        {
            offsets[one, one] = new double[Months];
            for (var other = 0; other < one; other++)
            {
                offsets[one, other] = Between(values[one], values[other], months);
                offsets[other, one] = [.. offsets[one, other].Select(offset => -offset)];
            }
        }
        return new(offsets);
    }

    private static double[] Between(double[] one, double[] other, byte[] months)
    {
        var sums = new double[Months];
        var days = new int[Months];
        for (var day = 0; day < months.Length; day++)
        {
            var difference = one[day] - other[day];
            if (double.IsNaN(difference))
                continue;
            sums[months[day]] += difference;
            days[months[day]]++;
        }
        var ofAll = days.Sum() >= MinDays ? sums.Sum() / days.Sum() : double.NaN;
        return [.. sums.Select((sum, month) => days[month] >= MinDays ? sum / days[month] : ofAll)];
    }
}
