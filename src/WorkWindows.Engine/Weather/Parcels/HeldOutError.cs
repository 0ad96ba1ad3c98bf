using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>How far values that were worked out lie from those that were read on the same days.</summary>
/// <param name="BiasC">Mean of worked out less read, °C.</param>
/// <param name="MaeC">Mean of the absolute differences, °C.</param>
/// <param name="RmseC">Square root of the mean of the squared differences, °C.</param>
/// <param name="Days">How many days were compared.</param>
public sealed record HeldOutError(double BiasC, double MaeC, double RmseC, int Days)
{
    /// <summary>All days of several errors as one; null without any.</summary>
    public static HeldOutError? Of(IEnumerable<HeldOutError> errors)
    {
        var (bias, absolute, squared, days) = (0.0, 0.0, 0.0, 0);
        foreach (var error in errors)
        {
            bias += error.BiasC * error.Days;
            absolute += error.MaeC * error.Days;
            squared += error.RmseC * error.RmseC * error.Days;
            days += error.Days;
        }
        return days == 0 ? null : new(bias / days, absolute / days, Math.Sqrt(squared / days), days);
    }

    /// <summary>Compares two values a day; a day without either is left out. Null when no day is left.</summary>
    internal static HeldOutError? Of(DaySpan days, DaySpan ofGroup, Func<int, double> worked, double[] read)
    {
        var (bias, absolute, squared, count) = (0.0, 0.0, 0.0, 0);
        var from = Math.Max(0, ofGroup.IndexOf(days.First));
        var to = Math.Min(ofGroup.Count - 1, ofGroup.IndexOf(days.Last));
        for (var day = from; day <= to; day++)
        {
            if (double.IsNaN(read[day]))
                continue;
            var error = worked(day) - read[day];
            if (double.IsNaN(error))
                continue;
            bias += error;
            absolute += Math.Abs(error);
            squared += error * error;
            count++;
        }
        return count == 0 ? null : new(bias / count, absolute / count, Math.Sqrt(squared / count), count);
    }
}
