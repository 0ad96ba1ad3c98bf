using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Reads the forecast by the hour of the US National Weather Service, in its US or SI units.</summary>
/// <remarks>
/// A day has the lowest and highest temperature, the highest wind and gust and the lowest humidity of its hours, when
/// these cover it from midnight to midnight. Temperatures are whole degrees at the hour, so that the true extreme
/// may lie a little further out. The chance of rain says nothing of its amount and is not used.
/// </remarks>
public static class HourlyForecast
{
    /// <param name="json">The reply of <c>/gridpoints/{office}/{x},{y}/forecast/hourly</c>, UTF-8.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="answeredAt">When the reply was made.</param>
    /// <exception cref="FeedFormatException">
    /// Nothing in the reply can be used, or it was issued after it was made.
    /// </exception>
    public static DailyForecast Read(ReadOnlyMemory<byte> json, DateTimeZone zone, Instant answeredAt)
    {
        ArgumentNullException.ThrowIfNull(zone);
        using var document = FeedJson.Parse(json);
        var properties = document.RootElement.Member("properties") ?? document.RootElement;
        if (properties.Member("periods") is not { ValueKind: JsonValueKind.Array } list)
            throw new FeedFormatException("The reply has no 'periods', so it is not a forecast by the hour.");
        var horizon = new ForecastHorizon(ForecastIssue.At(properties, answeredAt));
        var faults = new FaultCollector();
        var layers = Layers(list, horizon, faults);
        var report = faults.ToReport();
        ImmutableArray<DailyReading> readings =
        [
            .. layers.SelectMany(layer => layer.Readings(ForecastDays.WholeDays(layer.Spans, zone, layer.Extreme)))
                .OrderBy(reading => reading.Date).ThenBy(reading => reading.Element),
        ];
        return readings.IsEmpty
            ? throw new FeedFormatException($"The forecast covers no day with a usable value. {report}".TrimEnd())
            : new(horizon.IssuedAt, readings, RestOfDay(layers, zone), report);
    }

    private static ImmutableArray<DayLayer> Layers(
        JsonElement list, ForecastHorizon horizon, FaultCollector faults)
    {
        var temperatures = new List<ForecastSpan>();
        var winds = new List<ForecastSpan>();
        var gusts = new List<ForecastSpan>();
        var humidities = new List<ForecastSpan>();
        foreach (var (index, element) in list.EnumerateArray().Index())
        {
            var period = new HourlyPeriod($"periods[{index}]", element, faults);
            if (period.Time(horizon) is not { } time)
                continue;
            Add(temperatures, period.TemperatureC());
            Add(winds, period.WindMps("windSpeed"));
            Add(gusts, period.WindMps("windGust"));
            Add(humidities, period.HumidityPercent());

            void Add(List<ForecastSpan> spans, double? value)
            {
                if (value is { } known)
                    spans.Add(new(time, known));
            }
        }
        return
        [
            new(DailyElement.MinTemperatureC, Ascending(temperatures), DayLayer.Lowest),
            new(DailyElement.MaxTemperatureC, Ascending(temperatures), DayLayer.Highest),
            new(DailyElement.WindMps, Ascending(winds), DayLayer.Highest),
            new(DailyElement.GustMps, Ascending(gusts), DayLayer.Highest),
            new(DailyElement.MinHumidityPercent, Ascending(humidities), DayLayer.Lowest),
        ];
    }

    private static ImmutableArray<ForecastSpan> Ascending(List<ForecastSpan> spans) =>
        [.. spans.OrderBy(span => span.Time.Start)];

    /// <summary>What is left of a day can make its wind and humidity worse; its temperatures may be past.</summary>
    private static ImmutableArray<DailyReading> RestOfDay(ImmutableArray<DayLayer> layers, DateTimeZone zone) =>
    [
        .. layers
            .Where(layer => layer.Element is not (DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC))
            .SelectMany(layer => layer.Readings(ForecastDays.RestOfFirstDay(layer.Spans, zone, layer.Extreme))),
    ];
}
