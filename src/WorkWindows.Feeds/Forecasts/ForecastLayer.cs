using System.Collections.Immutable;
using System.Text.Json;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>A quantity of the gridpoint forecast: its name and unit in the payload, and what can be true.</summary>
internal sealed record ForecastLayer(string Name, string Unit, double Lowest, double Highest)
{
    public static readonly ForecastLayer Temperature = new("temperature", "wmoUnit:degC", -60, 55);
    public static readonly ForecastLayer MaxTemperature = Temperature with { Name = "maxTemperature" };
    public static readonly ForecastLayer MinTemperature = Temperature with { Name = "minTemperature" };
    public static readonly ForecastLayer WindSpeed = new("windSpeed", "wmoUnit:km_h-1", 0, 400);
    public static readonly ForecastLayer WindGust = WindSpeed with { Name = "windGust" };

    /// <summary>The values of the layer that can be used, ascending by start, in the layer's unit.</summary>
    public ImmutableArray<ForecastSpan> Read(JsonElement properties, FaultCollector faults)
    {
        if (properties.Member(Name) is not { } layer)
            return [];
        var unit = layer.Member("uom");
        if (unit?.ValueKind != JsonValueKind.String || unit?.GetString() != Unit)
        {
            faults.Add(null, $"{Name}.uom", unit?.ToString() ?? "absent", Unit);
            return [];
        }
        if (layer.Member("values") is not { ValueKind: JsonValueKind.Array } values)
        {
            faults.Add(null, $"{Name}.values", layer.Member("values")?.ToString() ?? "absent", "an array of values");
            return [];
        }
        var spans = ImmutableArray.CreateBuilder<ForecastSpan>();
        foreach (var (index, value) in values.EnumerateArray().Index())
        {
            if (ReadSpan($"{Name}.values[{index}]", value, faults) is { } span)
                spans.Add(span);
        }
        return [.. spans.OrderBy(span => span.Time.Start)];
    }

    private ForecastSpan? ReadSpan(string field, JsonElement element, FaultCollector faults)
    {
        var validTime = element.Member("validTime");
        var time = validTime is { ValueKind: JsonValueKind.String } text
            ? ForecastSpan.ParseTime(text.ToString())
            : null;
        if (time is null)
            faults.Add(null, $"{field}.validTime", validTime?.ToString() ?? "absent", ForecastSpan.Accepted);
        var value = element.Member("value");
        var number = value is { ValueKind: JsonValueKind.Number } present ? present.GetDouble() : double.NaN;
        if (number >= Lowest && number <= Highest)
            return time is { } known ? new(known, number) : null;
        var shown = value is null ? "absent" : value.Value.GetRawText();
        faults.Add(null, $"{field}.value", shown, $"a number from {Lowest} to {Highest} ({Unit})");
        return null;
    }
}
