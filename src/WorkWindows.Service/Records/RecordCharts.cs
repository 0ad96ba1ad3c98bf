using NodaTime;

namespace WorkWindows.Service.Records;

/// <summary>Lays the views of a record out as charts.</summary>
public static class RecordCharts
{
    private const string Cold = "--cold", Warm = "--warm", Ink = "--ink", Leaf = "--open";

    public static ChartSpec Of(RecordTemperatures temperatures, IReadOnlyList<TemperatureLimit> limits)
    {
        var steps = temperatures.Steps();
        var (low, high) = temperatures.StepName == "day"
            ? ("minimum", "maximum")
            : ("lowest minimum", "highest maximum");
        return new(
            [.. steps.Select(step => ChartSpec.NumberOf(step.First))],
            [
                new(low, Cold, [.. steps.Select(step => step.LowestMinF)]),
                new(high, Warm, [.. steps.Select(step => step.HighestMaxF)]),
            ])
        {
            Step = temperatures.StepName,
            Limits = Drawn(limits),
            Stretches = StretchesOf(steps),
        };
    }

    public static ChartSpec Of(HeatChart heat)
    {
        var days = heat.Days;
        var year = days[0].Date.Year;
        return new(
            [.. days.Select(day => ChartSpec.NumberOf(day.Date))],
            [
                new("P90", Ink, [.. days.Select(day => day.P90)]) { IsHidden = true },
                new("P10", Ink, [.. days.Select(day => day.P10)]) { IsHidden = true },
                new("median", Ink, [.. days.Select(day => day.P50)]),
                new($"{year}", Warm, [.. days.Select(day => day.IsForecast ? null : day.SumF)]),
                new($"{year}, forecast", Warm, [.. days.Select(day => day.IsForecast ? day.SumF : null)])
                {
                    IsDashed = true,
                },
            ])
        {
            Unit = ChartSpec.DegreeDays,
            Bands = [[0, 1]],
            Limits = [new(heat.NeededF, "leaf-out")],
        };
    }

    public static ChartSpec Of(FanChart fan, IReadOnlyList<TemperatureLimit> limits, LocalDate today) => new(
        [.. fan.Days.Select(day => ChartSpec.NumberOf(day.Date))],
        [
            .. Of("minimum", Cold, fan, day => day.Min, day => day.MinF),
            .. Of("maximum", Warm, fan, day => day.Max, day => day.MaxF),
        ])
    {
        Bands = [[0, 4], [1, 3], [7, 11], [8, 10]],
        Limits = Drawn(limits),
        Marks = [new(ChartSpec.NumberOf(today), Ink)],
    };

    /// <summary>From P90 down to P10, then what is observed, then what is forecast.</summary>
    private static IEnumerable<ChartSeries> Of(
        string name, string color, FanChart fan, Func<FanDay, Spread?> spread, Func<FanDay, double?> known)
    {
        yield return Hidden($"{name} P90", quantiles => quantiles.P90);
        yield return Hidden(null, quantiles => quantiles.P75);
        yield return new($"{name} P50", color, Values(quantiles => quantiles.P50)) { IsDashed = true };
        yield return Hidden(null, quantiles => quantiles.P25);
        yield return Hidden($"{name} P10", quantiles => quantiles.P10);
        yield return new(name, color, [.. fan.Days.Select(day => day.IsForecast ? null : known(day))]);
        yield return new($"{name}, forecast", color, [.. fan.Days.Select(day => day.IsForecast ? known(day) : null)])
        {
            IsDashed = true,
        };

        ChartSeries Hidden(string? label, Func<Spread, double> value) =>
            new(label, color, Values(value)) { IsHidden = true };

        List<double?> Values(Func<Spread, double> value) =>
            [.. fan.Days.Select(day => spread(day) is { } quantiles ? value(quantiles) : (double?)null)];
    }

    private static List<ChartLimit> Drawn(IReadOnlyList<TemperatureLimit> limits) =>
        [.. limits.Select(limit => new ChartLimit(limit.ValueF, limit.Label))];

    /// <summary>The stretches whose values are not the own station's; full where it has none.</summary>
    private static List<ChartStretch> StretchesOf(IReadOnlyList<TemperatureStep> steps)
    {
        var stretches = new List<ChartStretch>();
        for (var step = 0; step < steps.Count; step++)
        {
            var (first, origin) = (step, steps[step].Origin);
            while (step + 1 < steps.Count && steps[step + 1].Origin == origin)
                step++;
            if (origin < Origin.Blended)
                continue;
            var end = step + 1 < steps.Count ? steps[step + 1].First : steps[step].First.PlusDays(1);
            stretches.Add(new(
                ChartSpec.NumberOf(steps[first].First), ChartSpec.NumberOf(end) - 1, origin == Origin.Filled));
        }
        return stretches;
    }
}
