using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Spectre.Console;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Commands;

/// <summary>Evaluated tasks as a table or as JSON.</summary>
internal static class SeasonOutput
{
    // Wide enough for a table that goes to a file or a pipe.
    private const int RedirectedWidth = 200;

    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public static void WriteJson(TextWriter output, IReadOnlyList<EvaluatedRow> rows) => output.WriteLine(
        JsonSerializer.Serialize(
            rows.Select(row => new
            {
                task = row.Task.Key,
                parcel = row.Parcel.Parcel,
                practice = row.Task.Practice.Id,
                timeZone = row.Parcel.TimeZone,
                season = row.Season,
            }),
            Json));

    public static void WriteTable(TextWriter output, IReadOnlyList<EvaluatedRow> rows)
    {
        var console = AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(output) });
        if (Console.IsOutputRedirected)
            console.Profile.Width = RedirectedWidth;
        var table = new Table().Border(TableBorder.Minimal)
            .AddColumns("task", "parcel", "practice", "state", "from", "to")
            .AddColumn(new TableColumn("days").RightAligned())
            .AddColumn("why");
        foreach (var row in rows)
        {
            foreach (var (from, cells) in Cells(row).OrderBy(run => run.From))
                table.AddRow([.. new[] { row.Task.Key, row.Parcel.Parcel, row.Task.Practice.Name }.Concat(cells)
                    .Select(cell => new Markup(Markup.Escape(cell)))]);
        }
        console.Write(table);
        foreach (var row in rows)
        {
            var days = row.Season.Days;
            console.WriteLine($"{row.Task.Key}: {days.Open} open, {days.Limited} limited, {days.Unknown} unknown, "
                + $"{days.Closed} closed days. {LeafOut(row)}");
        }
        console.WriteLine("Alerts of weather services are not part of station records: none is taken into account.");
        foreach (var caution in Cautions.Usual)
            console.WriteLine(caution);
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
