using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Reads the gridpoint JSON of the US National Weather Service.</summary>
/// <remarks>
/// <para>
/// The layers maxTemperature and minTemperature are the service's own day and night extremes: the maximum is that of
/// 7 to 19 h and the minimum that of 19 to 8 h local standard time (National Weather Service, Grand Forks, "Observed
/// maximum and minimum temperature", weather.gov/fgf/gfeobsmaximin); the payload gives both an hour more. The maximum
/// goes to the day that holds the middle of its interval, the minimum to the morning in which its interval ends. Where
/// a day has no value of these layers, the hourly temperature gives it, provided that it covers the whole day.
/// </para>
/// <para>
/// Wind, gust and chance of thunder are the highest and humidity is the lowest of the values of a day, and rain is
/// their sum, provided that these cover the whole day. The depth of the snow is not forecast: snowfallAmount is what
/// falls, and snowLevel a height above the sea.
/// </para>
/// </remarks>
public static class GridpointForecast
{
    private const double MpsPerKmPerHour = 1 / 3.6;

    /// <param name="json">The reply of <c>/gridpoints/{office}/{x},{y}</c>, UTF-8.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="answeredAt">When the reply was made.</param>
    /// <exception cref="FeedFormatException">
    /// Nothing in the reply can be used, or it was issued after it was made.
    /// </exception>
    public static DailyForecast Read(ReadOnlyMemory<byte> json, DateTimeZone zone, Instant answeredAt)
    {
        ArgumentNullException.ThrowIfNull(zone);
        using var document = FeedJson.Parse(json);
        if (document.RootElement.Member("properties") is not { ValueKind: JsonValueKind.Object } properties)
            throw new FeedFormatException("The reply has no 'properties', so it is not a gridpoint forecast.");
        var horizon = new ForecastHorizon(ForecastIssue.At(properties, answeredAt));
        var faults = new FaultCollector();
        var hourly = HourlyLayers(layer => layer.Read(properties, horizon, faults));
        var readings = ReadDays(layer => layer.Read(properties, horizon, faults), hourly, zone);
        var report = faults.ToReport();
        return readings.IsEmpty
            ? throw new FeedFormatException($"The forecast covers no day with a usable value. {report}".TrimEnd())
            : new(horizon.IssuedAt, readings, RestOfDay(hourly, zone), report);
    }

    /// <summary>The layers whose extreme of the day is wanted.</summary>
    private static ImmutableArray<DayLayer> HourlyLayers(Func<ForecastLayer, ImmutableArray<ForecastSpan>> spansOf) =>
    [
        new(DailyElement.WindMps, spansOf(ForecastLayer.WindSpeed), DayLayer.Highest, MpsPerKmPerHour),
        new(DailyElement.GustMps, spansOf(ForecastLayer.WindGust), DayLayer.Highest, MpsPerKmPerHour),
        new(DailyElement.MinHumidityPercent, spansOf(ForecastLayer.Humidity), DayLayer.Lowest, 1),
        new(DailyElement.ThunderChancePercent, spansOf(ForecastLayer.Thunder), DayLayer.Highest, 1),
    ];

    private static ImmutableArray<DailyReading> ReadDays(
        Func<ForecastLayer, ImmutableArray<ForecastSpan>> spansOf, ImmutableArray<DayLayer> hourly, DateTimeZone zone)
    {
        var temperatures = spansOf(ForecastLayer.Temperature);
        var minima = ForecastDays.WholeDays(temperatures, zone, DayLayer.Lowest);
        foreach (var (date, value) in ForecastDays.Minima(spansOf(ForecastLayer.MinTemperature), zone))
            minima[date] = value;
        var maxima = ForecastDays.WholeDays(temperatures, zone, DayLayer.Highest);
        foreach (var (date, value) in ForecastDays.Maxima(spansOf(ForecastLayer.MaxTemperature), zone))
            maxima[date] = value;
        var rain = ForecastDays.Totals(spansOf(ForecastLayer.Precipitation), zone);
        return
        [
            .. Of(DailyElement.MinTemperatureC, minima)
                .Concat(Of(DailyElement.MaxTemperatureC, maxima))
                .Concat(Of(DailyElement.PrecipitationMm, rain))
                .Concat(hourly.SelectMany(layer =>
                    layer.Readings(ForecastDays.WholeDays(layer.Spans, zone, layer.Extreme))))
                .OrderBy(reading => reading.Date)
                .ThenBy(reading => reading.Element),
        ];
    }

    private static ImmutableArray<DailyReading> RestOfDay(ImmutableArray<DayLayer> hourly, DateTimeZone zone) =>
    [
        .. hourly.SelectMany(layer =>
            layer.Readings(ForecastDays.RestOfFirstDay(layer.Spans, zone, layer.Extreme))),
    ];

    private static IEnumerable<DailyReading> Of(DailyElement element, Dictionary<LocalDate, double> days) =>
        days.Select(day => new DailyReading(day.Key, element, day.Value, QualityFlag: null));
}
