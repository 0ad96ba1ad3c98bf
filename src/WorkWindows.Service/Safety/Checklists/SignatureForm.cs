using NodaTime;
using NodaTime.Text;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>A signature as a phone or a page sends it.</summary>
/// <param name="Key">Made where it was signed; the same when it is sent again.</param>
/// <param name="PersonId">Who signed there; null for whoever sends it.</param>
/// <param name="Version">The version of the list that was shown.</param>
/// <param name="Items">The lines that were acknowledged, as they were shown.</param>
/// <param name="Name">The name as it was typed.</param>
/// <param name="SignedAt">When, RFC 3339, by the phone's clock; null for now.</param>
/// <param name="InsteadBecause">Why a consultant releases the work in place of its crew lead; null otherwise.</param>
public sealed record SignatureForm(
    Guid? Key, Guid? PersonId, string? Version, IReadOnlyList<AcknowledgedItem>? Items, string? Name, string? SignedAt,
    string? InsteadBecause = null)
{
    /// <summary>Phones without a network keep their own time.</summary>
    public const int MostDaysOff = 2;

    public const int ShortestReason = 10, LongestReason = 500;

    private const int VersionLength = 64;

    private static readonly string TimeForm =
        $"a time as in 2026-02-01T07:10:00-05:00, at most {MostDaysOff} days from now";

    internal SignatureFields Check(Instant now, FieldFaults faults)
    {
        if (Key is not { } key || key == Guid.Empty)
            faults.Add("key", Key, "an id that was made for this signature, the same when it is sent again");
        var signedAt = faults.Optional("signedAt", SignedAt, text => IsNear(text, now), TimeForm);
        if (Items is null or [])
            faults.Add("items", null, "every line of the list, each with its id and text");
        return new(
            Key ?? Guid.Empty,
            faults.Required(
                "version", Version, text => text.Length == VersionLength && text.All(char.IsAsciiHexDigitLower),
                "the version of the list that was shown, 64 characters"),
            Items ?? [],
            faults.Required("name", Name, FieldText.IsName, $"the name of whoever signs: {FieldText.Name}"),
            signedAt is null ? now : OffsetDateTimePattern.Rfc3339.Parse(signedAt).Value.ToInstant(),
            faults.Optional(
                "insteadBecause", InsteadBecause,
                text => text.Length is >= ShortestReason and <= LongestReason && !text.Contains('\0'),
                $"why the crew lead cannot release it, {ShortestReason} to {LongestReason} characters, or nothing"));
    }

    private static bool IsNear(string text, Instant now) =>
        OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: var given }
        && given.ToInstant() is var moment && moment >= now - Duration.FromDays(MostDaysOff)
        && moment <= now + Duration.FromDays(MostDaysOff);
}

/// <summary>A line that was acknowledged, as it was shown.</summary>
/// <param name="Id">The line.</param>
/// <param name="Text">All that it said.</param>
public sealed record AcknowledgedItem(string? Id, string? Text);

/// <summary>The fields of a form that was found right.</summary>
internal sealed record SignatureFields(
    Guid Key, string Version, IReadOnlyList<AcknowledgedItem> Items, string Name, Instant SignedAt,
    string? InsteadBecause);
