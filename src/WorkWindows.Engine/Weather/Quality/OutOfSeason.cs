namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds temperatures, and half months of them, that no other year of the record comes near at their time of the year.
/// </summary>
/// <remarks>
/// The time of the year is five days and the five before and after them, in all years. Source:
/// docs/rules/weather-quality.md.
/// </remarks>
internal static class OutOfSeason
{
    /// <summary>Standard deviations from the mean, both robust. Source: Durre et al. 2010, from memory.</summary>
    public const double Deviations = 6;

    /// <summary>
    /// Without as many values the time of the year is not known. Source: Durre et al. 2010, from memory.
    /// </summary>
    public const int MinValues = 100;

    /// <summary>
    /// Half a month whose median is further off is rejected, °C. December 1989 and March 2012 lay up to 17 °C off; °F
    /// taken for °C lie 20 °C off at -15 °C and further where it is warmer.
    /// </summary>
    public const double HalfMonthC = 20;

    private const int HalfMonthDays = 15;

    /// <summary>A half month with fewer values says too little.</summary>
    private const int MinHalfMonthDays = 10;

    private const int PentadDays = 5;

    private const int Pentads = (DayAxis.DaysOfYear + PentadDays - 1) / PentadDays;

    public static void Check(CheckedColumn column, DayAxis axis)
    {
        var usual = UsualOf(column, axis);
        RejectHalfMonths(column, axis, usual);
        for (var day = 0; day < column.Values.Length; day++)
        {
            if (usual[axis.PlacesInYear[day] / PentadDays] is not { } season)
                continue;
            if (Math.Abs(column.Values[day] - season.Mean) > Deviations * season.Deviation)
                column.Reject(day, RejectionReason.OutOfSeason);
        }
    }

    private static void RejectHalfMonths(CheckedColumn column, DayAxis axis, Usual?[] usual)
    {
        var off = new double[column.Values.Length];
        for (var day = 0; day < off.Length; day++)
        {
            off[day] = usual[axis.PlacesInYear[day] / PentadDays] is { } season
                ? column.Values[day] - season.Mean
                : double.NaN;
        }
        for (var first = 0; first < off.Length; first += PentadDays)
        {
            double[] known = [.. off.AsSpan(first, Math.Min(HalfMonthDays, off.Length - first)).ToArray()
                .Where(value => !double.IsNaN(value)).Order()];
            if (known.Length < MinHalfMonthDays || Math.Abs(Biweight.Median(known)) <= HalfMonthC)
                continue;
            var isWarm = Biweight.Median(known) > 0;
            for (var day = first; day < Math.Min(first + HalfMonthDays, off.Length); day++)
            {
                // A day of the half month that is not off to the same side may well be right.
                if (Math.Abs(off[day]) > HalfMonthC / 2 && off[day] > 0 == isWarm)
                    column.Reject(day, RejectionReason.OutOfSeason);
            }
        }
    }

    private static Usual?[] UsualOf(CheckedColumn column, DayAxis axis)
    {
        var values = Enumerable.Range(0, Pentads).Select(_ => new List<double>()).ToArray();
        for (var day = 0; day < column.Values.Length; day++)
        {
            if (!double.IsNaN(column.Values[day]))
                values[axis.PlacesInYear[day] / PentadDays].Add(column.Values[day]);
        }
        var usual = new Usual?[Pentads];
        for (var pentad = 0; pentad < Pentads; pentad++)
        {
            double[] around =
                [.. values[(pentad + Pentads - 1) % Pentads], .. values[pentad], .. values[(pentad + 1) % Pentads]];
            if (around.Length < MinValues)
                continue;
            Array.Sort(around);
            var (mean, deviation) = Biweight.Of(around);
            if (deviation > 0)
                usual[pentad] = new(mean, deviation);
        }
        return usual;
    }

    private sealed record Usual(double Mean, double Deviation);
}
