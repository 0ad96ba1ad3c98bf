using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>An incident as someone records it.</summary>
/// <param name="Kind">injury, property-damage or near-miss.</param>
/// <param name="HappenedAt">When, RFC 3339.</param>
/// <param name="WhatHappened">What happened.</param>
/// <param name="WhoWasTold">Who was told.</param>
/// <param name="CorrectsId">The entry that this one corrects, or null.</param>
public sealed record IncidentForm(
    string? Kind, string? HappenedAt, string? WhatHappened, string? WhoWasTold, Guid? CorrectsId)
{
    public const int LongestText = 4000;
    public const int MostDaysBack = 366;

    private static readonly Dictionary<string, IncidentKind> Kinds = Enum.GetValues<IncidentKind>()
        .ToDictionary(kind => JsonNamingPolicy.KebabCaseLower.ConvertName($"{kind}"));

    private static readonly string TextForm = $"1 to {LongestText} characters";

    private static readonly string TimeForm =
        $"a time as in 2026-02-01T09:30:00-05:00, not in the future and at most {MostDaysBack} days ago";

    internal IncidentFields Check(Instant now, FieldFaults faults)
    {
        var kind = faults.Required("kind", Kind, Kinds.ContainsKey, $"one of: {string.Join(", ", Kinds.Keys)}");
        var happenedAt = faults.Required("happenedAt", HappenedAt, text => IsPast(text, now), TimeForm);
        return new(
            kind.Length == 0 ? default : Kinds[kind],
            happenedAt.Length == 0 ? now : OffsetDateTimePattern.Rfc3339.Parse(happenedAt).Value.ToInstant(),
            faults.Required("whatHappened", WhatHappened, IsText, TextForm),
            faults.Required("whoWasTold", WhoWasTold, IsText, $"names, or nobody: {TextForm}"));
    }

    private static bool IsText(string text) => text.Length is > 0 and <= LongestText && !text.Contains('\0');

    private static bool IsPast(string text, Instant now) =>
        OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: var given }
        && given.ToInstant() is var moment && moment <= now && moment >= now - Duration.FromDays(MostDaysBack);
}

/// <summary>The fields of a form that was found right.</summary>
internal sealed record IncidentFields(IncidentKind Kind, Instant HappenedAt, string WhatHappened, string WhoWasTold);
