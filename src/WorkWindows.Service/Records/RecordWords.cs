using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Records;

/// <summary>What a page of weather says in sentences.</summary>
public static class RecordWords
{
    private const double FahrenheitPerCelsius = 1.8;

    /// <summary>As in 'Today 14 to 32 °F by the forecast.'; null where nothing is shown.</summary>
    public static string? OfToday(FanChart? fan, LocalDate today) =>
        fan?.Days.FirstOrDefault(day => day.Date == today) is not { } day ? null
        : day is { MinF: { } min, MaxF: { } max }
            ? $"Today {Whole(min)} to {Whole(max)} °F{(day.IsForecast ? " by the forecast" : "")}."
        : "Today's temperatures are not known.";

    /// <summary>The coldest night ahead; null without a forecast.</summary>
    public static string? ColdestToCome(FanChart? fan, LocalDate today) =>
        fan?.ColdestToCome(today) is { MinF: { } min } day
            ? $"Coldest in the forecast: {Whole(min)} °F on {DayWords.Of(day.Date, today)}."
            : null;

    /// <summary>How far values that were worked out may be off; null where each is a station's own.</summary>
    public static string? ErrorsOf(Engine.Weather.Parcels.ParcelRecord record)
    {
        var (min, max) = (DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC);
        string[] parts =
        [
            .. Part("a blended minimum", record.BlendingError(min)?.MaeC),
            .. Part("a blended maximum", record.BlendingError(max)?.MaeC),
            .. Part("a minimum filled from the others", record.FillingError(min)?.MaeC),
            .. Part("a maximum filled from the others", record.FillingError(max)?.MaeC),
        ];
        return parts.Length == 0
            ? null
            : $"By the readings of {Engine.Weather.Parcels.ParcelRecord.ErrorYears} years {string.Join(", ", parts)}, "
                + "in the mean.";

        static IEnumerable<string> Part(string what, double? errorC) => errorC is { } error
            ? [$"{what} is off by {(error * FahrenheitPerCelsius).ToString("0.0", CultureInfo.InvariantCulture)} °F"]
            : [];
    }

    /// <summary>Where this spring's heat stands among past ones.</summary>
    public static string Of(HeatChart heat, LocalDate today)
    {
        var needed = $"leaf-out needs {Whole(heat.NeededF)} °F-days";
        var past = heat.PastYears.Count == 0 ? "" : $"the median of {heat.PastYears.Count} past years";
        var usual = heat.Days.FirstOrDefault(day => day.P50 >= heat.NeededF) is { } half
            ? $" Half of the {heat.PastYears.Count} past years have as much by {DayWords.Of(half.Date, today)}."
            : "";
        if (heat.Reached is { } reached)
        {
            return $"The {Whole(heat.NeededF)} °F-days that leaf-out needs "
                + (reached.IsForecast ? "come, by the forecast," : "were there")
                + $" on {DayWords.Of(reached.Date, today)}.{usual}";
        }
        if (heat.Latest is not { SumF: { } sum } latest)
        {
            return $"The sum begins on {DayWords.Of(heat.Days[0].Date, today)}; {needed}.{usual}";
        }
        var median = latest.P50 is { } middle ? $", {past} {Whole(middle)}" : "";
        var forecast = latest.IsForecast ? ", with the forecast" : "";
        return $"By {DayWords.Of(latest.Date, today)} {Whole(sum)} °F-days{forecast}{median}; {needed}.";
    }

    /// <summary>Why no past years follow the forecast; null when some do.</summary>
    public static string? TooFew(FanChart fan) => fan.PastYears.Count > 0
        ? null
        : $"What may follow is not told: it takes {Engine.Chances.Ensemble.MinYears} past years with temperatures of "
            + $"these days, and the record has {fan.UsableYears}.";

    /// <summary>How the model of leaf-out counts heat.</summary>
    public static string Of(ThermalTime model, HeatChart heat) =>
        $"Degree-days above a daily mean of {heat.BaseF.ToString("0.#", CultureInfo.InvariantCulture)} °F, from "
        + $"{model.Start.Day} {CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(model.Start.Month)} on.";

    private static string Whole(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture);
}
