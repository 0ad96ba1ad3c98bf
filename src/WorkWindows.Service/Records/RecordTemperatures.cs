using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Service.Records;

/// <summary>Where a temperature of a record comes from; of several days the last of these that is among them.</summary>
public enum Origin
{
    None,

    /// <summary>Read at the parcel's own station.</summary>
    Own,

    /// <summary>A mean of that station and others.</summary>
    Blended,

    /// <summary>Worked out from others: the parcel's own station has none.</summary>
    Filled,
}

/// <summary>The temperatures of one day or of several.</summary>
/// <param name="First">The first day.</param>
/// <param name="LowestMinF">The lowest minimum, °F; null when none is known.</param>
/// <param name="HighestMaxF">The highest maximum, °F; null when none is known.</param>
/// <param name="Origin">Where they come from.</param>
/// <param name="DaysWithout">Days that lack the minimum or the maximum.</param>
public sealed record TemperatureStep(
    LocalDate First, double? LowestMinF, double? HighestMaxF, Origin Origin, int DaysWithout);

/// <summary>Daily minima and maxima of some days of a record, in °F.</summary>
public sealed class RecordTemperatures
{
    /// <summary>Over two years a day is narrower than a pixel, and over fifteen a week is.</summary>
    private const int MostDaysByDay = 731, MostDaysByWeek = 5479;

    private const int DaysOfAWeek = 7;

    private readonly DaySpan days;
    private readonly double[] minF, maxF;
    private readonly Origin[] origins;

    private RecordTemperatures(DaySpan days, double[] minF, double[] maxF, Origin[] origins) =>
        (this.days, this.minF, this.maxF, this.origins) = (days, minF, maxF, origins);

    /// <summary>What a step of the chart stands for: 'day', 'week' or 'month'.</summary>
    public string StepName => days.Count <= MostDaysByDay ? "day" : days.Count <= MostDaysByWeek ? "week" : "month";

    public static RecordTemperatures Of(DailySeries series, DaySpan days) =>
        Of(series[DailyElement.MinTemperatureC], series[DailyElement.MaxTemperatureC], days);

    /// <param name="min">Minima; null without any.</param>
    /// <param name="max">Maxima; null without any.</param>
    /// <param name="days">The days that are of interest.</param>
    public static RecordTemperatures Of(DailyColumn? min, DailyColumn? max, DaySpan days)
    {
        var origins = new Origin[days.Count];
        Mark(min, days, origins);
        Mark(max, days, origins);
        return new(
            days, Laid(min, DailyElement.MinTemperatureC, days), Laid(max, DailyElement.MaxTemperatureC, days),
            origins);
    }

    /// <summary>By days up to two years, by weeks up to fifteen, else by months.</summary>
    public IReadOnlyList<TemperatureStep> Steps() => StepName switch
    {
        "day" => Grouped(day => day),
        "week" => Grouped(day => day / DaysOfAWeek),
        _ => Months(),
    };

    /// <summary>By months up to two years, else by years: short enough to be read aloud.</summary>
    public IReadOnlyList<TemperatureStep> Rows() =>
        days.Count <= MostDaysByDay ? Months() : Grouped(day => days[day].Year);

    private List<TemperatureStep> Months() => Grouped(day => days[day] is var date ? date.Year * 12 + date.Month : 0);

    private List<TemperatureStep> Grouped(Func<int, int> keyOf)
    {
        var steps = new List<TemperatureStep>();
        for (var day = 0; day < days.Count;)
        {
            var (first, key) = (day, keyOf(day));
            var (low, high, origin, without) = (double.NaN, double.NaN, Origin.None, 0);
            for (; day < days.Count && keyOf(day) == key; day++)
            {
                low = double.MinNumber(low, minF[day]);
                high = double.MaxNumber(high, maxF[day]);
                origin = origins[day] > origin ? origins[day] : origin;
                without += double.IsNaN(minF[day] + maxF[day]) ? 1 : 0;
            }
            steps.Add(new(days[first], Known(low), Known(high), origin, without));
        }
        return steps;
    }

    private static double? Known(double valueF) => double.IsNaN(valueF) ? null : Math.Round(valueF, 1);

    private static double[] Laid(DailyColumn? column, DailyElement element, DaySpan days)
    {
        var values = new double[days.Count];
        Array.Fill(values, double.NaN);
        column?.CopyTo(days, values);
        for (var day = 0; day < values.Length; day++)
        {
            if (double.IsNaN(values[day]))
                continue;
            var readC = column!.ReadsUsUnits ? AsRead.Restore(element, values[day]) : values[day];
            values[day] = RuleUnit.DegF.FromSignalUnit(readC);
        }
        return values;
    }

    private static void Mark(DailyColumn? column, DaySpan days, Origin[] origins)
    {
        if (column is null)
            return;
        var offset = Period.DaysBetween(column.First, days.First);
        for (var day = Math.Max(0, -offset); day < days.Count && day + offset < column.Values.Length; day++)
        {
            if (double.IsNaN(column.Values[day + offset]))
                continue;
            var origin = column.Contributors.IsDefault ? Origin.Own : OriginOf(column.Contributors[day + offset]);
            origins[day] = origin > origins[day] ? origin : origins[day];
        }
    }

    private static Origin OriginOf(byte contributors) => contributors == DailyColumn.OwnValue ? Origin.Own
        : (contributors & DailyColumn.OwnValue) != 0 ? Origin.Blended
        : Origin.Filled;
}
