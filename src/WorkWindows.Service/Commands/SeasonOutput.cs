using NodaTime;
using Spectre.Console;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Commands;

/// <summary>Evaluated tasks as a table or as JSON.</summary>
internal static class SeasonOutput
{
    public const string NoAlerts =
        "Alerts of weather services are not part of station records: none is taken into account.";

    public static void WriteJson(TextWriter output, IReadOnlyList<EvaluatedRow> rows) =>
        Printing.AsJson(output, rows.Select(row => new
        {
            task = row.Task.Key,
            parcel = row.Parcel.Parcel,
            practice = row.Task.Practice.Id,
            timeZone = row.Parcel.TimeZone,
            season = row.Season,
        }));

    public static void WriteTable(TextWriter output, IReadOnlyList<EvaluatedRow> rows)
    {
        var table = Printing.Table("task", "parcel", "practice", "state", "from", "to")
            .AddColumn(new TableColumn("days").RightAligned())
            .AddColumn("why");
        foreach (var row in rows)
        {
            foreach (var (from, cells) in Cells(row).OrderBy(run => run.From))
                table.Add([row.Task.Key, row.Parcel.Parcel, row.Task.Practice.Name, .. cells]);
        }
        Printing.Write(output, table);
        foreach (var row in rows)
        {
            var days = row.Season.Days;
            output.WriteLine($"{row.Task.Key}: {days.Open} open, {days.Limited} limited, {days.Unknown} unknown, "
                + $"{days.Closed} closed days. {LeafOut(row)}");
        }
        output.WriteLine(NoAlerts);
        foreach (var caution in Cautions.Usual)
            output.WriteLine(caution);
    }

    private static IEnumerable<(LocalDate From, string[] Cells)> Cells(EvaluatedRow row) =>
    [
        .. row.Season.Windows.Select(run => (run.From, new[]
        {
            run.LimitedDays == 0 ? "open" : run.OpenDays == 0 ? "limited" : "open or limited",
            $"{run.From:R}", $"{run.To:R}", $"{run.OpenDays + run.LimitedDays}",
            run.EndedBy.Count == 0 ? "" : $"until: {string.Join("; ", run.EndedBy)}",
        })),
        .. row.Season.NotKnown.Select(run => (run.From, new[]
        {
            "unknown", $"{run.From:R}", $"{run.To:R}", $"{Period.DaysBetween(run.From, run.To) + 1}",
            $"not known: {string.Join(", ", run.Missing)}",
        })),
    ];

    private static string LeafOut(EvaluatedRow row) => row.Season.LeafOut.Count == 0
        ? "Leaf-out not known."
        : $"Leaf-out {string.Join(", ", row.Season.LeafOut.Select(e => $"{e.Date:R} ({Wording.OfEvent(e.Basis)})"))}.";
}
