using CsvHelper;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads a CSV file of planned tasks; its form is described in docs/files.md.</summary>
public static class TaskFile
{
    private static readonly string[] RequiredColumns = ["task", "parcel", "practice", "quantity", "unit", "crewSize"];

    private static readonly string[] Columns =
        [.. RequiredColumns, "deadline", "scheduledOn", "prerequisites", "crewLead"];

    private static readonly string Header =
        $"a first line that names the columns, in any order: {string.Join(",", Columns)}";

    /// <param name="stream">The file.</param>
    /// <param name="knownParcels">The parcels that tasks may be on.</param>
    /// <param name="knownTasks">Tasks outside the file that may be prerequisites.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static TaskImport Read(Stream stream, IReadOnlySet<string> knownParcels, IReadOnlySet<string> knownTasks)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(knownParcels);
        ArgumentNullException.ThrowIfNull(knownTasks);
        var faults = new FaultCollector();
        var text = Utf8Text.Read(stream, faults);
        if (faults.Any)
            return new([], faults.ToReport());
        var rows = ReadRows(text, faults);
        TaskChecks.ReportRepeatedKeys(rows, faults);
        TaskChecks.ReportUnknownParcels(rows, knownParcels, faults);
        TaskChecks.ReportUnknownPrerequisites(rows, knownTasks, faults);
        TaskChecks.ReportCycles(rows, faults);
        return new([.. rows.Select(row => row.Row).OfType<TaskRow>()], faults.ToReport());
    }

    private static List<ReadTask> ReadRows(ReadOnlyMemory<byte> text, FaultCollector faults)
    {
        using var csv = CsvReader.Create(text, new CsvReaderOptions
        {
            Separator = ',',
            TrimWhitespace = true,
            TrimInsideQuotes = true,
            // A quote that is never closed then spoils its own line and not the rest of the file.
            AllowLineBreaksInQuotes = false,
            TrackLineNumbers = true,
            FieldCountMismatch = CsvFieldCountHandling.Skip,
            OnMalformedRecord = record => Report(record, faults),
        });
        var rows = new List<ReadTask>();
        if (!HasColumns(csv.Headers, faults))
            return rows;
        while (csv.Read())
            rows.Add(TaskReader.Read(csv, faults));
        if (rows.Count == 0 && !faults.Any)
            faults.Add(1, "file", "no tasks", "at least one task after the first line");
        return rows;
    }

    private static void Report(CsvMalformedRecord record, FaultCollector faults) => faults.Add(
        (int)record.LineNumber, "line", record.RawRecord, record.Reason == CsvMalformedReason.FieldCountMismatch
            ? "as many fields as the first line has, those with commas in quotes"
            : "quotes around a whole field, and a quote within doubled");

    private static bool HasColumns(IReadOnlyList<string> columns, FaultCollector faults)
    {
        if (columns is [] or [""])
        {
            faults.Add(null, "file", "empty", Header);
            return false;
        }
        foreach (var unknown in columns.Except(Columns))
            faults.Add(1, "column", unknown, Header);
        foreach (var repeated in columns.GroupBy(column => column).Where(column => column.Count() > 1))
            faults.Add(1, "column", repeated.Key, "each column once");
        foreach (var absent in RequiredColumns.Except(columns))
            faults.Add(1, "column", "absent", $"a column {absent}");
        return !faults.Any;
    }
}
