using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using NodaTime;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>One hour of a forecast: a number, or a text that holds one, or an object with a unit and a value.</summary>
internal sealed partial class HourlyPeriod(string field, JsonElement period, FaultCollector faults)
{
    private const double LowestC = -60, HighestC = 55, HighestMps = 400 / 3.6;

    private const string Wind = "a speed such as '5 mph', '5 to 10 mph' or '16 km/h', up to 400 km/h";

    /// <returns>Null, with a fault, for what is no time of the forecast.</returns>
    public Interval? Time(ForecastHorizon horizon)
    {
        var (start, end) = (Instant("startTime"), Instant("endTime"));
        if (start is { } from && end is { } to && from >= to)
            faults.Add(null, $"{field}.endTime", Shown("endTime"), "an instant after startTime");
        if (!(start < end))
            return null;
        var time = new Interval(start, end);
        if (horizon.Holds(time))
            return time;
        faults.Add(null, $"{field}.startTime", $"{Shown("startTime")}/{Shown("endTime")}", horizon.Accepted);
        return null;
    }

    /// <returns>Null, with a fault unless the service gives none.</returns>
    public double? TemperatureC()
    {
        if (IsAbsent("temperature"))
            return null;
        var unit = period.Member("temperatureUnit")?.Text() ?? Unit("temperature");
        double? degreesC = (Number("temperature"), unit) switch
        {
            ({ } value, "C" or "wmoUnit:degC") => value,
            ({ } value, "F" or "wmoUnit:degF") => (value - 32) / 1.8,
            _ => null,
        };
        return Within("temperature", degreesC, LowestC, HighestC,
            $"a number from {LowestC} to {HighestC} °C with its unit, F or C");
    }

    /// <returns>The upper end of a range; null, with a fault unless the service gives none.</returns>
    public double? WindMps(string name)
    {
        if (IsAbsent(name))
            return null;
        double? mps = null;
        if (period.Member(name)?.Text() is { } text && WindText().Match(text) is { Success: true } match)
        {
            var value = double.Parse(match.Groups["high"].ValueSpan, CultureInfo.InvariantCulture);
            mps = match.Groups["unit"].ValueSpan is "mph" ? value * 0.44704 : value / 3.6;
        }
        else if (Unit(name) == "wmoUnit:km_h-1")
        {
            mps = (Number(name, "maxValue") ?? Number(name)) / 3.6;
        }
        return Within(name, mps, 0, HighestMps, Wind);
    }

    /// <returns>Null, with a fault unless the service gives none.</returns>
    public double? HumidityPercent()
    {
        const string name = "relativeHumidity";
        if (IsAbsent(name) || period.Member(name)?.Member("value") is { ValueKind: JsonValueKind.Null })
            return null;
        var percent = Unit(name) == "wmoUnit:percent" ? Number(name) : null;
        return Within(name, percent, 0, 100, "a number from 0 to 100 (wmoUnit:percent)");
    }

    private bool IsAbsent(string name) => period.Member(name) is null or { ValueKind: JsonValueKind.Null };

    private string? Unit(string name) => period.Member(name)?.Member("unitCode")?.Text();

    private double? Number(string name, string part = "value")
    {
        var element = period.Member(name);
        if (element is { ValueKind: JsonValueKind.Object } quantity)
            element = quantity.Member(part);
        return element switch
        {
            { ValueKind: JsonValueKind.Number } number => number.GetDouble(),
            { } other when double.TryParse(
                other.Text(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture, out var value) => value,
            _ => null,
        };
    }

    private double? Within(string name, double? value, double lowest, double highest, string accepted)
    {
        if (value >= lowest && value <= highest)
            return value;
        faults.Add(null, $"{field}.{name}", Shown(name), accepted);
        return null;
    }

    private Instant? Instant(string name)
    {
        if (period.Member(name)?.Text() is { } text && ForecastSpan.ParseInstant(text) is { } instant)
            return instant;
        faults.Add(
            null, $"{field}.{name}", Shown(name), "an instant from 2000 to 2100 such as 2026-04-12T06:00:00-05:00");
        return null;
    }

    private string Shown(string name) =>
        period.Member(name) is { } element ? element.Text() ?? element.GetRawText() : "absent";

    [GeneratedRegex(@"^(?:\d{1,3} to )?(?<high>\d{1,3}) (?<unit>mph|km/h)$", RegexOptions.CultureInvariant)]
    private static partial Regex WindText();
}
