using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;

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
/// <para>Wind and gust are the highest of the hourly values of a day, provided that these cover the whole day.</para>
/// </remarks>
public static class GridpointForecast
{
    private const double MpsPerKmPerHour = 1 / 3.6;

    /// <param name="json">The reply of <c>/gridpoints/{office}/{x},{y}</c>, UTF-8.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <exception cref="ForecastFormatException">Nothing in the reply can be used.</exception>
    public static DailyForecast Read(ReadOnlyMemory<byte> json, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        using var document = Parse(json);
        if (document.RootElement.Member("properties") is not { ValueKind: JsonValueKind.Object } properties)
            throw new ForecastFormatException("The reply has no 'properties', so it is not a gridpoint forecast.");
        var issuedAt = IssuedAt(properties);
        var faults = new FaultCollector();
        var winds = ForecastLayer.WindSpeed.Read(properties, faults);
        var gusts = ForecastLayer.WindGust.Read(properties, faults);
        var readings = ReadDays(properties, winds, gusts, zone, faults);
        var report = faults.ToReport();
        return readings.IsEmpty
            ? throw new ForecastFormatException($"The forecast covers no day with a usable value. {report}".TrimEnd())
            : new(issuedAt, readings, RestOfDay(winds, gusts, zone), report);
    }

    private static ImmutableArray<DailyReading> ReadDays(
        JsonElement properties, ImmutableArray<ForecastSpan> winds, ImmutableArray<ForecastSpan> gusts,
        DateTimeZone zone, FaultCollector faults)
    {
        var hourly = ForecastLayer.Temperature.Read(properties, faults);
        var minima = ForecastDays.WholeDays(hourly, zone, values => values.Min());
        foreach (var (date, value) in ForecastDays.Minima(ForecastLayer.MinTemperature.Read(properties, faults), zone))
            minima[date] = value;
        var maxima = ForecastDays.WholeDays(hourly, zone, values => values.Max());
        foreach (var (date, value) in ForecastDays.Maxima(ForecastLayer.MaxTemperature.Read(properties, faults), zone))
            maxima[date] = value;
        var wind = ForecastDays.WholeDays(winds, zone, values => values.Max() * MpsPerKmPerHour);
        var gust = ForecastDays.WholeDays(gusts, zone, values => values.Max() * MpsPerKmPerHour);
        return
        [
            .. Of(DailyElement.MinTemperatureC, minima)
                .Concat(Of(DailyElement.MaxTemperatureC, maxima))
                .Concat(Of(DailyElement.WindMps, wind))
                .Concat(Of(DailyElement.GustMps, gust))
                .OrderBy(reading => reading.Date)
                .ThenBy(reading => reading.Element),
        ];
    }

    private static ImmutableArray<DailyReading> RestOfDay(
        ImmutableArray<ForecastSpan> winds, ImmutableArray<ForecastSpan> gusts, DateTimeZone zone) =>
    [
        .. new[] { (Element: DailyElement.WindMps, Spans: winds), (Element: DailyElement.GustMps, Spans: gusts) }
            .SelectMany(layer => ForecastDays.RestOfFirstDay(layer.Spans, zone).Select(day => new DailyReading(
                day.Key, layer.Element, day.Value * MpsPerKmPerHour, QualityFlag: null))),
    ];

    private static IEnumerable<DailyReading> Of(DailyElement element, Dictionary<LocalDate, double> days) =>
        days.Select(day => new DailyReading(day.Key, element, day.Value, QualityFlag: null));

    private static JsonDocument Parse(ReadOnlyMemory<byte> json)
    {
        try
        {
            return JsonDocument.Parse(json);
        }
        catch (JsonException fault)
        {
            throw new ForecastFormatException($"The reply is not whole JSON: {fault.Message}", fault);
        }
    }

    private static Instant IssuedAt(JsonElement properties)
    {
        var text = properties.Member("updateTime")?.ToString() ?? "absent";
        var parsed = OffsetDateTimePattern.Rfc3339.Parse(text);
        return parsed.Success
            ? parsed.Value.ToInstant()
            : throw new ForecastFormatException(
                $"updateTime '{text}' is not an instant such as 2026-04-12T10:27:58+00:00.");
    }
}
