using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>When a forecast of the US National Weather Service was made.</summary>
internal static class ForecastIssue
{
    /// <summary>By how much the clocks of the service and of this machine may differ.</summary>
    public static readonly Duration Slack = Duration.FromMinutes(5);

    /// <param name="properties">Of the reply.</param>
    /// <param name="answeredAt">When the reply was made.</param>
    /// <exception cref="FeedFormatException">
    /// The reply does not say, or names a time to come: such a forecast would never age, and stand above all later
    /// ones.
    /// </exception>
    public static Instant At(JsonElement properties, Instant answeredAt)
    {
        var text = properties.Member("updateTime")?.Text() ?? "absent";
        if (OffsetDateTimePattern.Rfc3339.Parse(text) is not { Success: true, Value: var time })
        {
            throw new FeedFormatException(
                $"updateTime '{text}' is not an instant such as 2026-04-12T10:27:58+00:00.");
        }
        var issuedAt = time.ToInstant();
        return issuedAt - answeredAt <= Slack
            ? issuedAt
            : throw new FeedFormatException(
                $"updateTime '{text}' is more than {Slack.TotalMinutes:0} minutes after the reply, of {answeredAt}.");
    }
}
