using CsvHelper;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>A CSV file whose first line names its columns.</summary>
/// <param name="Required">Columns that must be there.</param>
/// <param name="Optional">Columns that may be there; no others may.</param>
/// <param name="RowName">What lines are, a plural that ends in s.</param>
internal sealed record CsvTable(string[] Required, string[] Optional, string RowName)
{
    /// <returns>What was read of each line; nothing when the columns are wrong.</returns>
    public List<T> Read<T>(ReadOnlyMemory<byte> text, FaultCollector faults, Func<CsvReader, FaultCollector, T> read)
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
        var rows = new List<T>();
        if (!HasColumns(csv.Headers, faults))
            return rows;
        while (csv.Read())
            rows.Add(read(csv, faults));
        if (rows.Count == 0 && !faults.Any)
            faults.Add(1, "file", $"no {RowName}", $"at least one {RowName[..^1]} after the first line");
        return rows;
    }

    private static void Report(CsvMalformedRecord record, FaultCollector faults) => faults.Add(
        (int)record.LineNumber, "line", record.RawRecord, record.Reason == CsvMalformedReason.FieldCountMismatch
            ? "as many fields as the first line has, those with commas in quotes"
            : "quotes around a whole field, and a quote within doubled");

    private bool HasColumns(IReadOnlyList<string> columns, FaultCollector faults)
    {
        string[] all = [.. Required, .. Optional];
        var header = $"a first line that names the columns, in any order: {string.Join(",", all)}";
        if (columns is [] or [""])
        {
            faults.Add(null, "file", "empty", header);
            return false;
        }
        foreach (var unknown in columns.Except(all))
            faults.Add(1, "column", unknown, header);
        foreach (var repeated in columns.GroupBy(column => column).Where(column => column.Count() > 1))
            faults.Add(1, "column", repeated.Key, "each column once");
        foreach (var absent in Required.Except(columns))
            faults.Add(1, "column", "absent", $"a column {absent}");
        return !faults.Any;
    }
}
