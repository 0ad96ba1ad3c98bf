using System.Text;
using System.Text.Json;

namespace WorkWindows.Feeds.Tests.Alerts;

/// <summary>Writes alert payloads with the members that a test needs.</summary>
internal static class AlertJson
{
    public static ReadOnlyMemory<byte> Payload(params IEnumerable<string> features) =>
        Encoding.UTF8.GetBytes($"{{\"type\": \"FeatureCollection\", \"features\": [{string.Join(", ", features)}]}}");

    /// <summary>A red flag warning of 12 April 2026, 11 to 15 h UTC, but for the pairs of name and JSON.</summary>
    public static string Feature(params IEnumerable<(string Name, string? Json)> changes)
    {
        var properties = new Dictionary<string, string?>
        {
            ["event"] = Quoted("Red Flag Warning"),
            ["status"] = Quoted("Actual"),
            ["messageType"] = Quoted("Alert"),
            ["effective"] = Quoted("2026-04-12T08:00:00+00:00"),
            ["onset"] = Quoted("2026-04-12T11:00:00+00:00"),
            ["expires"] = Quoted("2026-04-12T13:00:00+00:00"),
            ["ends"] = Quoted("2026-04-12T15:00:00+00:00"),
        };
        foreach (var (name, json) in changes)
            properties[name] = json;
        // A member without JSON is left out.
        var members = properties.Where(property => property.Value is not null)
            .Select(property => $"{Quoted(property.Key)}: {property.Value}");
        return $"{{\"type\": \"Feature\", \"geometry\": null, \"properties\": {{{string.Join(", ", members)}}}}}";
    }

    public static string Quoted(string text) => JsonSerializer.Serialize(text);
}
