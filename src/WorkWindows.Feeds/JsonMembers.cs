using System.Text.Json;

namespace WorkWindows.Feeds;

internal static class JsonMembers
{
    /// <returns>The member, or null if the element is no object or has no such member.</returns>
    public static JsonElement? Member(this JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var member) ? member : null;
}
