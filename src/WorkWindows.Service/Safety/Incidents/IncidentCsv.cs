using NodaTime.Text;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>Incidents as a table for a spreadsheet (RFC 4180), in UTF-8.</summary>
internal static class IncidentCsv
{
    private static readonly InstantPattern Utc = InstantPattern.General;

    private static readonly string[] Columns =
    [
        "id", "correctsId", "kind", "happenedAtUtc", "day", "timeZone", "property", "parcel", "task", "practice",
        "state", "rules", "whatHappened", "whoWasTold", "decisionHash", "recordedAtUtc", "recordedBy",
    ];

    public static string Of(IEnumerable<PlacedIncident> incidents) => Csv.Of(incidents.Select(Row).Prepend(Columns));

    private static string[] Row(PlacedIncident placed)
    {
        var row = placed.Incident;
        return
        [
            $"{row.Id}", $"{row.CorrectsId}", IncidentView.Words(row.Kind), Utc.Format(row.HappenedAt), $"{row.Day:R}",
            placed.TimeZone, placed.Property, placed.Parcel, placed.TaskKey, placed.Practice, row.State,
            string.Join("; ", row.Rules), row.WhatHappened, row.WhoWasTold, row.DecisionHash ?? "",
            Utc.Format(row.RecordedAt), row.RecordedBy,
        ];
    }
}
