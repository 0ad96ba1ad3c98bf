using System.Net;
using System.Text.Json;
using NodaTime;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Manners;

/// <summary>
/// Reads error replies: RFC 9457, <c>{"error":true,"reason":"…"}</c>, <c>{"error":"…"}</c> and
/// <c>{"errorMessage":"…"}</c>.
/// </summary>
internal static class FeedProblem
{
    public static FeedRefusedException Read(HttpStatusCode status, byte[] body, Duration? retryAfter)
    {
        try
        {
            using var document = JsonDocument.Parse(body);
            var problem = document.RootElement;
            return new(
                status, Text(problem, "type")?.Split('/')[^1], Text(problem, "title"),
                Text(problem, "detail") ?? Text(problem, "reason") ?? Text(problem, "error")
                    ?? Text(problem, "errorMessage"),
                retryAfter);
        }
        catch (JsonException)
        {
            // A proxy in between answers in HTML or not at all; the status is then all there is to tell.
            return new(status, null, null, null, retryAfter);
        }
    }

    private static string? Text(JsonElement problem, string name) =>
        problem.Member(name)?.Text();
}
