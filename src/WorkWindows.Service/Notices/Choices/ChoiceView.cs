using NodaTime.Text;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>How a person wants to be told.</summary>
/// <param name="TimeZone">The IANA zone of the quiet hours; null for the organization's.</param>
/// <param name="Temperatures">'fahrenheit' or 'celsius'.</param>
/// <param name="Areas">'acres' or 'hectares'.</param>
/// <param name="QuietFrom">When quiet hours begin, in 24 hours, or null.</param>
/// <param name="QuietUntil">When they end, or null.</param>
/// <param name="WebhookAddress">Where signed requests go, or null.</param>
/// <param name="HasCalendar">Whether there is a calendar feed.</param>
/// <param name="Kinds">Every kind that the person's role gets.</param>
public sealed record ChoiceView(
    string? TimeZone, string Temperatures, string Areas, string? QuietFrom, string? QuietUntil, string? WebhookAddress,
    bool HasCalendar, IReadOnlyList<KindView> Kinds)
{
    /// <summary>What requests are signed with; told once, when the address is set.</summary>
    public string? WebhookSecret { get; init; }

    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    internal static ChoiceView Of(
        Role role, NoticeSettings? settings, IReadOnlyCollection<NoticeChoice> choices) => new(
        settings?.TimeZone,
        settings?.Celsius == true ? ChoiceForm.Celsius : ChoiceForm.Fahrenheit,
        settings?.Hectares == true ? ChoiceForm.Hectares : ChoiceForm.Acres,
        settings?.QuietFrom is { } from ? Time.Format(from) : null,
        settings?.QuietUntil is { } until ? Time.Format(until) : null,
        settings?.WebhookAddress,
        settings?.CalendarKey is not null,
        [.. NoticeKinds.All.Where(kind => kind.Roles.Contains(role)).Select(kind => KindView.Of(kind, choices))]);
}

/// <summary>A kind of notice and the ways in which it is told.</summary>
/// <param name="Kind">Its key.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="MayBeTurnedOff">Whether the ways may be chosen; otherwise it goes every way there is.</param>
/// <param name="HasDays">Whether the calendar is one of them.</param>
/// <param name="Ways">The ways, such as mail.</param>
public sealed record KindView(string Kind, string Title, bool MayBeTurnedOff, bool HasDays, IReadOnlyList<string> Ways)
{
    internal static KindView Of(NoticeKind kind, IReadOnlyCollection<NoticeChoice> choices)
    {
        var chosen = choices.FirstOrDefault(choice => choice.Kind == kind.Key)?.Channels ?? NoticeChoice.Unless;
        var ways = !kind.MayBeTurnedOff ? NoticeChannels.Mail | NoticeChannels.Webhook
            : kind.HasDays ? chosen : chosen & ~NoticeChannels.Calendar;
        return new(kind.Key, kind.Title, kind.MayBeTurnedOff, kind.HasDays, ChoiceForm.WordsOf(ways));
    }
}
