using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.OpenMeteo;

/// <summary>Reads the daily values of Open-Meteo: arrays side by side, a null where there is no value.</summary>
internal static class OpenMeteoDays
{
    /// <summary>What is asked for, and the unit in which it is asked for.</summary>
    public static readonly ImmutableArray<OpenMeteoVariable> Variables =
    [
        new("temperature_2m_min", DailyElement.MinTemperatureC, "°C", ElementUnit.Celsius),
        new("temperature_2m_max", DailyElement.MaxTemperatureC, "°C", ElementUnit.Celsius),
        new("wind_speed_10m_max", DailyElement.WindMps, "m/s", ElementUnit.Mps),
        new("wind_gusts_10m_max", DailyElement.GustMps, "m/s", ElementUnit.Mps),
        new("precipitation_sum", DailyElement.PrecipitationMm, "mm", ElementUnit.Mm),
        new("relative_humidity_2m_min", DailyElement.MinHumidityPercent, "%", ElementUnit.Percent),
    ];

    public const string Units =
        "temperature_unit=celsius&wind_speed_unit=ms&precipitation_unit=mm&timeformat=iso8601";

    /// <param name="json">The reply, UTF-8.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="days">The days that were asked for.</param>
    /// <param name="possible">The days that the reply can speak of; another one is a fault.</param>
    /// <returns>The readings of those days that were asked for, and the values that cannot be used.</returns>
    /// <exception cref="FeedFormatException">The reply has no days, or those of another zone.</exception>
    public static (ImmutableArray<DailyReading> Readings, FaultReport Faults) Read(
        ReadOnlyMemory<byte> json, DateTimeZone zone, DateInterval days, DateInterval possible)
    {
        ArgumentNullException.ThrowIfNull(zone);
        using var document = FeedJson.Parse(json);
        var reply = document.RootElement;
        if (reply.Member("timezone")?.Text() is not { } name || name != zone.Id)
            throw new FeedFormatException($"The days of the reply are not those of {zone.Id}.");
        if (reply.Member("daily") is not { } daily
            || daily.Member("time") is not { ValueKind: JsonValueKind.Array } time)
        {
            throw new FeedFormatException("The reply has no 'daily.time', so it holds no days.");
        }
        var faults = new FaultCollector();
        var dates = time.EnumerateArray().Index()
            .Select(entry => Date(entry.Index, entry.Item, possible, faults)).ToList();
        var readings = new ReadingCollector(faults);
        foreach (var variable in Variables)
            ReadVariable(variable, reply, daily, dates, readings, faults);
        return (readings.Within(days), faults.ToReport());
    }

    private static LocalDate? Date(int index, JsonElement element, DateInterval possible, FaultCollector faults)
    {
        var parsed = LocalDatePattern.Iso.Parse(element.Text() ?? "");
        if (parsed.Success && possible.Contains(parsed.Value))
            return parsed.Value;
        faults.Add(
            null, $"daily.time[{index}]", element.GetRawText(),
            parsed.Success
                ? $"a date from {possible.Start:uuuu-MM-dd} to {possible.End:uuuu-MM-dd}"
                : "an existing date as yyyy-MM-dd");
        return null;
    }

    private static void ReadVariable(
        OpenMeteoVariable variable, JsonElement reply, JsonElement daily, List<LocalDate?> dates,
        ReadingCollector readings, FaultCollector faults)
    {
        if (daily.Member(variable.Name) is not { } values)
            return;
        var unit = reply.Member("daily_units")?.Member(variable.Name);
        if (unit?.Text() != variable.UnitName)
        {
            faults.Add(null, $"daily_units.{variable.Name}", unit?.GetRawText() ?? "absent", variable.UnitName);
            return;
        }
        if (values.ValueKind != JsonValueKind.Array || values.GetArrayLength() != dates.Count)
        {
            faults.Add(null, $"daily.{variable.Name}", values.GetRawText(), $"{dates.Count} values, one for each day");
            return;
        }
        foreach (var (index, value) in values.EnumerateArray().Index())
        {
            var field = $"daily.{variable.Name}[{index}]";
            if (value.ValueKind == JsonValueKind.Number && dates[index] is { } date)
                readings.Add(field, date, variable.Element, value.GetDouble(), variable.Unit);
            else if (value.ValueKind is not (JsonValueKind.Null or JsonValueKind.Number))
                faults.Add(null, field, value.GetRawText(), $"{variable.Unit.Accepted(variable.Element)}, or null");
        }
    }
}

/// <param name="Name">What the service calls it.</param>
/// <param name="Element">What it is here.</param>
/// <param name="UnitName">What the service calls its unit.</param>
/// <param name="Unit">The unit.</param>
internal sealed record OpenMeteoVariable(string Name, DailyElement Element, string UnitName, ElementUnit Unit);
