using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>How a person wants to be told of things.</summary>
/// <param name="Zone">The zone of the quiet hours.</param>
/// <param name="Quiet">When not to be written to, or null for never.</param>
/// <param name="Scale">The scale of temperatures.</param>
/// <param name="Webhook">Where signed requests go, or null.</param>
/// <param name="Chosen">The ways chosen for kinds of notices; the usual ones for kinds that are not in it.</param>
public sealed record Wishes(
    DateTimeZone Zone, QuietHours? Quiet, TemperatureScale Scale, string? Webhook,
    ImmutableDictionary<string, NoticeChannels> Chosen)
{
    /// <summary>Those of somebody who has chosen nothing.</summary>
    public static Wishes Usual { get; } = new(
        DateTimeZone.Utc, null, TemperatureScale.Fahrenheit, null,
        ImmutableDictionary<string, NoticeChannels>.Empty);

    public static Wishes Of(
        NoticeSettings? settings, IEnumerable<NoticeChoice> choices, DateTimeZone organization) => new(
        settings?.TimeZone is { } zone ? DateTimeZoneProviders.Tzdb[zone] : organization,
        settings is { QuietFrom: { } from, QuietUntil: { } until } ? new(from, until) : null,
        settings?.Celsius == true ? TemperatureScale.Celsius : TemperatureScale.Fahrenheit,
        settings?.WebhookAddress,
        choices.ToImmutableDictionary(choice => choice.Kind, choice => choice.Channels));

    /// <summary>How notices of a kind reach the person; what must not be missed goes every way there is.</summary>
    public NoticeChannels Ways(NoticeKind kind)
    {
        const NoticeChannels every = NoticeChannels.Mail | NoticeChannels.Webhook | NoticeChannels.Calendar;
        var ways = kind.MayBeTurnedOff ? Chosen.GetValueOrDefault(kind.Key, NoticeChoice.Unless) : every;
        if (Webhook is null)
            ways &= ~NoticeChannels.Webhook;
        return kind.HasDays || !kind.MayBeTurnedOff ? ways : ways & ~NoticeChannels.Calendar;
    }

    /// <summary>When a notice of a kind may go out to the person at the earliest.</summary>
    public Instant Earliest(NoticeKind kind, Instant now) =>
        kind.WaitsForMorning && Quiet is { } quiet ? quiet.Over(now, Zone) : now;
}
