using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Spectre.Console;

namespace WorkWindows.Service.Commands;

/// <summary>How commands print: a table for people or JSON for programs.</summary>
internal static class Printing
{
    // Wide enough for a table that goes to a file or a pipe.
    private const int RedirectedWidth = 200;

    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <param name="people">The form for people.</param>
    public static Option<string> Output(string people = "table")
    {
        var output = new Option<string>("--output")
        {
            DefaultValueFactory = _ => people,
            Description = $"{people} or json.",
        };
        output.AcceptOnlyFromAmong(people, "json");
        return output;
    }

    public static void AsJson(TextWriter output, object value) =>
        output.WriteLine(JsonSerializer.Serialize(value, Json));

    public static Table Table(params string[] columns) =>
        new Table().Border(TableBorder.Minimal).AddColumns(columns);

    public static void Add(this Table table, params IEnumerable<string> cells) =>
        table.AddRow([.. cells.Select(cell => new Markup(Markup.Escape(cell)))]);

    public static void Write(TextWriter output, Table table)
    {
        var console = AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(output) });
        if (Console.IsOutputRedirected)
            console.Profile.Width = RedirectedWidth;
        console.Write(table);
    }
}
