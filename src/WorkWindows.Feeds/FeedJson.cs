using System.Text.Json;
using System.Text.Unicode;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds;

/// <summary>The JSON of services.</summary>
internal static class FeedJson
{
    /// <exception cref="FeedFormatException">The reply is not whole JSON in UTF-8.</exception>
    public static JsonDocument Parse(ReadOnlyMemory<byte> json)
    {
        // The parser leaves texts as they are until they are asked for, and then it is too late.
        if (!Utf8.IsValid(json.Span))
            throw new FeedFormatException("The reply is not UTF-8.");
        try
        {
            return JsonDocument.Parse(json);
        }
        catch (JsonException fault)
        {
            throw new FeedFormatException($"The reply is not whole JSON: {fault.Message}", fault);
        }
    }

    /// <returns>The text, or null if the element is another kind of value or holds half a character.</returns>
    public static string? Text(this JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.String)
            return null;
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
