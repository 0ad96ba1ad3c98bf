using System.Text.Json;
using NodaTime;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>An incident as the API, the pages and the audit show it.</summary>
/// <param name="Id">The entry.</param>
/// <param name="TaskId">The task at which it happened.</param>
/// <param name="CorrectsId">The entry that this one corrects, or null.</param>
/// <param name="Kind">How bad it was.</param>
/// <param name="HappenedAt">When.</param>
/// <param name="Day">The day in the property's zone.</param>
/// <param name="WhatHappened">What happened.</param>
/// <param name="WhoWasTold">Who was told.</param>
/// <param name="DecisionHash">The decision about the day that stood at that hour, or null.</param>
/// <param name="RecordedAt">When it was recorded.</param>
/// <param name="RecordedBy">Who recorded it.</param>
/// <param name="Conditions">The day's state, signals and rules in force.</param>
public sealed record IncidentView(
    Guid Id, Guid TaskId, Guid? CorrectsId, IncidentKind Kind, Instant HappenedAt, LocalDate Day, string WhatHappened,
    string WhoWasTold, string? DecisionHash, Instant RecordedAt, string RecordedBy, JsonElement Conditions)
{
    /// <summary>The day's state as it was kept, such as 'limited'.</summary>
    public string State => Conditions.GetProperty("day").GetProperty("state").GetString()!;

    /// <summary>The ids of the rules that spoke of the day.</summary>
    internal IReadOnlyList<string> Rules =>
    [
        .. Conditions.GetProperty("day").GetProperty("rules").EnumerateArray()
            .Select(rule => rule.GetProperty("id").GetString()!),
    ];

    internal static IncidentView Of(Incident row) => new(
        row.Id, row.TaskId, row.CorrectsId, row.Kind, row.HappenedAt, row.Day, row.WhatHappened, row.WhoWasTold,
        row.DecisionHash, row.RecordedAt, row.RecordedBy, JsonSerializer.Deserialize<JsonElement>(row.Conditions));

    /// <summary>As in 'near miss'.</summary>
    public static string Words(IncidentKind kind) => kind switch
    {
        IncidentKind.Injury => "injury",
        IncidentKind.PropertyDamage => "property damage",
        IncidentKind.NearMiss => "near miss",
    };
}
