using System.Net;
using System.Text.Json;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Reads the service's error replies, which follow RFC 9457 when they come from the service itself.</summary>
internal static class ServiceProblem
{
    public static FeedRefusedException Read(HttpStatusCode status, byte[] body)
    {
        try
        {
            using var document = JsonDocument.Parse(body);
            var problem = document.RootElement;
            return new(status, Text(problem, "type")?.Split('/')[^1], Text(problem, "title"), Text(problem, "detail"), null);
        }
        catch (JsonException)
        {
            // A proxy in between answers in HTML or not at all; the status is then all there is to tell.
            return new(status, null, null, null, null);
        }
    }

    private static string? Text(JsonElement problem, string name) =>
        problem.Member(name)?.Text();
}
