using System.Collections.Immutable;
using System.Text.Json;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>A quantity of the gridpoint forecast: its name and unit in the payload, and what can be true.</summary>
/// <param name="Name">The member that holds it.</param>
/// <param name="Unit">The unit that its member uom must name.</param>
/// <param name="Lowest">The lowest value that can be true, in that unit.</param>
/// <param name="Highest">The highest.</param>
/// <param name="MayOmitUnit">Whether the service leaves out the unit.</param>
internal sealed record ForecastLayer(
    string Name, string Unit, double Lowest, double Highest, bool MayOmitUnit = false)
{
    public static readonly ForecastLayer Temperature = new("temperature", "wmoUnit:degC", -60, 55);
    public static readonly ForecastLayer MaxTemperature = Temperature with { Name = "maxTemperature" };
    public static readonly ForecastLayer MinTemperature = Temperature with { Name = "minTemperature" };
    public static readonly ForecastLayer WindSpeed = new("windSpeed", "wmoUnit:km_h-1", 0, 400);
    public static readonly ForecastLayer WindGust = WindSpeed with { Name = "windGust" };
    public static readonly ForecastLayer Precipitation = new("quantitativePrecipitation", "wmoUnit:mm", 0, 2000);
    public static readonly ForecastLayer Humidity = new("relativeHumidity", "wmoUnit:percent", 0, 100);
    public static readonly ForecastLayer Thunder =
        new("probabilityOfThunder", "wmoUnit:percent", 0, 100, MayOmitUnit: true);

    /// <summary>The values of the layer that can be used, ascending by start, in the layer's unit.</summary>
    public ImmutableArray<ForecastSpan> Read(JsonElement properties, ForecastHorizon horizon, FaultCollector faults)
    {
        if (properties.Member(Name) is not { } layer)
            return [];
        var unit = layer.Member("uom");
        var isOmitted = unit is null && MayOmitUnit;
        if (!isOmitted && unit?.Text() != Unit)
        {
            faults.Add(null, $"{Name}.uom", Shown(unit), Unit);
            return [];
        }
        if (layer.Member("values") is not { ValueKind: JsonValueKind.Array } values)
        {
            faults.Add(null, $"{Name}.values", Shown(layer.Member("values")), "an array of values");
            return [];
        }
        var spans = ImmutableArray.CreateBuilder<ForecastSpan>();
        foreach (var (index, value) in values.EnumerateArray().Index())
        {
            if (ReadSpan($"{Name}.values[{index}]", value, horizon, faults) is { } span)
                spans.Add(span);
        }
        return [.. spans.OrderBy(span => span.Time.Start)];
    }

    private ForecastSpan? ReadSpan(
        string field, JsonElement element, ForecastHorizon horizon, FaultCollector faults)
    {
        var validTime = element.Member("validTime");
        var time = validTime?.Text() is { } text ? ForecastSpan.ParseTime(text) : null;
        if (time is null)
            faults.Add(null, $"{field}.validTime", Shown(validTime), ForecastSpan.Accepted);
        else if (!horizon.Holds(time.Value))
        {
            faults.Add(null, $"{field}.validTime", Shown(validTime), horizon.Accepted);
            return null;
        }
        var value = element.Member("value");
        var number = value is { ValueKind: JsonValueKind.Number } present ? present.GetDouble() : double.NaN;
        if (number >= Lowest && number <= Highest)
            return time is { } known ? new(known, number) : null;
        faults.Add(null, $"{field}.value", value?.GetRawText() ?? "absent",
            $"a number from {Lowest} to {Highest} ({Unit})");
        return null;
    }

    private static string Shown(JsonElement? element) => element?.Text() ?? element?.GetRawText() ?? "absent";
}
