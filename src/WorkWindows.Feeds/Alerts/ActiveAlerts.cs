using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Alerts;

/// <summary>Reads the alerts GeoJSON of the US National Weather Service.</summary>
/// <remarks>
/// <para>
/// An alert lasts from its onset, or without one from when it is effective, to its end, or without one until the
/// message expires; <c>expires</c> alone says when the message is to be renewed, often before the hazard begins.
/// </para>
/// <para>
/// Tests, exercises and cancellations are passed over, and so are events of no known kind. What cannot be read of any
/// other alert makes the whole reply unusable: a warning that is lost is worse than not knowing.
/// </para>
/// </remarks>
public static class ActiveAlerts
{
    private const string Accepted = "an instant from 2000 to 2100 such as 2026-04-12T06:00:00-04:00";

    /// <param name="json">The reply of <c>/alerts/active?point={latitude},{longitude}</c>, UTF-8.</param>
    /// <returns>Each alert once, ascending by start.</returns>
    /// <exception cref="FeedFormatException">
    /// The reply is not a whole collection of alerts, or an alert in it cannot be read.
    /// </exception>
    public static ImmutableArray<ActiveAlert> Read(ReadOnlyMemory<byte> json)
    {
        using var document = FeedJson.Parse(json);
        if (document.RootElement.Member("features") is not { ValueKind: JsonValueKind.Array } features)
            throw new FeedFormatException("The reply has no 'features', so it is not a collection of alerts.");
        if (document.RootElement.Member("pagination")?.Member("next") is not null)
            throw new FeedFormatException("The reply is one page of several, and not all alerts.");
        var faults = new FaultCollector();
        var alerts = new HashSet<ActiveAlert>();
        foreach (var (index, feature) in features.EnumerateArray().Index())
        {
            if (ReadFeature($"features[{index}]", feature, faults) is { } alert)
                alerts.Add(alert);
        }
        return faults.Any
            ? throw new FeedFormatException($"An alert cannot be read. {faults.ToReport()}")
            : [.. alerts.OrderBy(alert => alert.StartsAt).ThenBy(alert => alert.Event, StringComparer.Ordinal)
                .ThenBy(alert => alert.EndsAt)];
    }

    private static ActiveAlert? ReadFeature(string field, JsonElement feature, FaultCollector faults)
    {
        var properties = feature.Member("properties");
        if (properties?.Member("status")?.Text() is { } status && status != "Actual"
            || properties?.Member("messageType")?.Text() == "Cancel")
        {
            return null;
        }
        if (properties?.Member("event")?.Text() is not { } eventName)
        {
            faults.Add(null, $"{field}.properties.event", Shown(properties?.Member("event")), "the name of an event");
            return null;
        }
        return AlertEvents.KindOf(eventName) is { } kind
            && ReadTimes($"{field} {eventName}", properties.Value, faults) is var (start, end)
            ? new(kind, eventName, start, end)
            : null;
    }

    private static (Instant Start, Instant End)? ReadTimes(string field, JsonElement properties, FaultCollector faults)
    {
        var start = Given("onset") ? Time("onset") : Time("effective");
        if (Given("ends"))
        {
            var end = Time("ends");
            if (end < start)
                faults.Add(null, $"{field}.ends", Shown(properties.Member("ends")), "an instant not before the onset");
            return start is { } from && end >= from ? (from, end.Value) : null;
        }
        // A message that runs out before its hazard begins is renewed until then.
        return start is { } begin && Time("expires") is { } expires ? (begin, Instant.Max(begin, expires)) : null;

        bool Given(string name) => properties.Member(name) is { ValueKind: not JsonValueKind.Null };

        Instant? Time(string name)
        {
            var text = properties.Member(name)?.Text();
            if (text is not null && OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: var time }
                && time.Year is >= 2000 and <= 2100)
            {
                // Whole seconds, as the service gives them: a part of one would look like another alert once stored.
                return Instant.FromUnixTimeSeconds(time.ToInstant().ToUnixTimeSeconds());
            }
            faults.Add(null, $"{field}.{name}", Shown(properties.Member(name)), Accepted);
            return null;
        }
    }

    private static string Shown(JsonElement? element) => element?.Text() ?? element?.GetRawText() ?? "absent";
}
