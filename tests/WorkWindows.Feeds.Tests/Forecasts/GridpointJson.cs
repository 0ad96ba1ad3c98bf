using System.Text;
using System.Text.Json;

namespace WorkWindows.Feeds.Tests.Forecasts;

/// <summary>Writes gridpoint payloads of the layers that a test needs.</summary>
internal static class GridpointJson
{
    public const string DegC = "wmoUnit:degC";
    public const string KmPerHour = "wmoUnit:km_h-1";
    public const string Mm = "wmoUnit:mm";
    public const string Percent = "wmoUnit:percent";

    /// <summary>When the payloads were issued.</summary>
    public const string Issued = "2026-01-10T03:00:00+00:00";

    public static ReadOnlyMemory<byte> Payload(params IEnumerable<string> layers) => PayloadOf(Issued, layers);

    public static ReadOnlyMemory<byte> PayloadOf(string updateTime, IEnumerable<string> layers)
    {
        var members = layers.Prepend($"\"updateTime\": \"{updateTime}\"");
        return Encoding.UTF8.GetBytes($"{{\"properties\": {{{string.Join(", ", members)}}}}}");
    }

    /// <param name="values">Pairs of a time and a JSON value.</param>
    public static string Layer(string name, string unit, params IEnumerable<(string ValidTime, string Value)> values) =>
        $"\"{name}\": {{\"uom\": \"{unit}\", \"values\": [{string.Join(",", values.Select(value =>
            $"{{\"validTime\": {JsonSerializer.Serialize(value.ValidTime)}, \"value\": {value.Value}}}"))}]}}";
}
