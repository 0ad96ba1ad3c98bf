using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Webhooks;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>How a person wants to be told, as it is handed in.</summary>
/// <param name="TimeZone">The IANA zone of the quiet hours; null for the organization's.</param>
/// <param name="Temperatures">'fahrenheit' or 'celsius'.</param>
/// <param name="Areas">'acres', also where it is left out, or 'hectares'.</param>
/// <param name="QuietFrom">When quiet hours begin, such as 21:00; null, as the end is, for none.</param>
/// <param name="QuietUntil">When they end, on the next day when it is not later.</param>
/// <param name="WebhookAddress">Where signed requests go; null for nowhere.</param>
/// <param name="Ways">The ways of each kind of notice; the usual ones for kinds that it leaves out.</param>
public sealed record ChoiceForm(
    string? TimeZone, string? Temperatures, string? QuietFrom, string? QuietUntil, string? WebhookAddress,
    IReadOnlyDictionary<string, IReadOnlyList<string>>? Ways, string? Areas = null)
{
    public const string Fahrenheit = "fahrenheit", Celsius = "celsius";
    public const string Acres = "acres", Hectares = "hectares";

    private const int LongestAddress = 500;
    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    private static readonly ImmutableDictionary<string, NoticeChannels> ByWord =
        new[] { NoticeChannels.Mail, NoticeChannels.Webhook, NoticeChannels.Calendar }
            .ToImmutableDictionary(WordOf, StringComparer.Ordinal);

    public static string WordOf(NoticeChannels way) => $"{way}".ToLowerInvariant();

    public static IReadOnlyList<string> WordsOf(NoticeChannels ways) =>
        [.. ByWord.Where(way => ways.HasFlag(way.Value)).OrderBy(way => way.Value).Select(way => way.Key)];

    internal ChoiceFields Check(Role role, bool allowPrivate, FieldFaults faults)
    {
        if (TimeZone is not null && DateTimeZoneProviders.Tzdb.GetZoneOrNull(TimeZone) is null)
            faults.Add("timeZone", TimeZone, "the name of an IANA time zone such as America/Detroit, or null");
        if (Temperatures is not (Fahrenheit or Celsius))
            faults.Add("temperatures", Temperatures, $"'{Fahrenheit}' or '{Celsius}'");
        if (Areas is not (null or Acres or Hectares))
            faults.Add("areas", Areas, $"'{Acres}' or '{Hectares}'");
        return new(
            TimeZone, Temperatures == Celsius, Areas == Hectares, Quiet(faults), Webhook(allowPrivate, faults),
            [.. (Ways ?? ImmutableDictionary<string, IReadOnlyList<string>>.Empty).Select(
                one => KeyValuePair.Create(one.Key, Channels(role, one.Key, one.Value, faults)))]);
    }

    private QuietHours? Quiet(FieldFaults faults)
    {
        const string accepted = "a time such as 21:00 for both ends of the quiet hours, or for neither";
        if (QuietFrom is null && QuietUntil is null)
            return null;
        var (from, until) = (Time.Parse(QuietFrom ?? ""), Time.Parse(QuietUntil ?? ""));
        if (!from.Success)
            faults.Add("quietFrom", QuietFrom, accepted);
        if (!until.Success)
            faults.Add("quietUntil", QuietUntil, accepted);
        if (!from.Success || !until.Success)
            return null;
        if (from.Value == until.Value)
            faults.Add("quietUntil", QuietUntil, "another time than that at which they begin");
        return new(from.Value, until.Value);
    }

    /// <summary>What delivery would refuse is refused here, where somebody sees it.</summary>
    private string? Webhook(bool allowPrivate, FieldFaults faults)
    {
        if (string.IsNullOrWhiteSpace(WebhookAddress))
            return null;
        var address = WebhookAddress.Trim();
        if (address.Length > LongestAddress || !WebhookTransport.IsAccepted(address, allowPrivate))
        {
            faults.Add("webhookAddress", address,
                "an address that begins with https://, without a name, a password or a fragment, of at most "
                + $"{LongestAddress} characters");
        }
        return address;
    }

    private static NoticeChannels Channels(Role role, string key, IReadOnlyList<string>? words, FieldFaults faults)
    {
        var field = $"ways.{key}";
        if (NoticeKinds.Find(key) is not { } kind || !kind.Roles.Contains(role))
        {
            var known = NoticeKinds.All.Where(one => one.Roles.Contains(role) && one.MayBeTurnedOff)
                .Select(one => one.Key);
            faults.Add(field, key, $"a kind of notice that the person gets: {string.Join(", ", known)}");
            return NoticeChannels.None;
        }
        if (!kind.MayBeTurnedOff)
        {
            faults.AddSentence(
                field, $"'{kind.Title}' always goes out: it takes back what was said, or calls for help.");
            return NoticeChannels.None;
        }
        var ways = NoticeChannels.None;
        foreach (var word in words ?? [])
        {
            if (ByWord.TryGetValue(word, out var way) && (way != NoticeChannels.Calendar || kind.HasDays))
                ways |= way;
            else
                faults.Add(field, word, kind.HasDays ? "mail, webhook or calendar" : "mail or webhook");
        }
        return ways;
    }
}

/// <summary>The fields of a form that was found right.</summary>
internal sealed record ChoiceFields(
    string? TimeZone, bool Celsius, bool Hectares, QuietHours? Quiet, string? Webhook,
    ImmutableArray<KeyValuePair<string, NoticeChannels>> Ways);
