using CsvHelper;

namespace WorkWindows.Feeds.Stations;

/// <summary>The CSV files with a line a day and a column for each element, quoted or not.</summary>
internal static class WideCsvReader
{
    private const string Columns =
        "a first line with DATE, STATION and at least one of TMIN, TMAX, PRCP, SNWD, WSF2, WSF5, WSFG and RHMN";

    /// <returns>Whether the first line of a file names a date and an element.</returns>
    public static bool IsHeading(string line)
    {
        var names = line.Split(',').Select(name => name.Trim('"', ' '));
        return names.Any(IsDate) && names.Any(name => WideTable.Find(name) is not null);
    }

    public static int Read(
        ReadOnlyMemory<byte> text, StationFileHints hints, StationDays days, FaultCollector faults)
    {
        if (hints.Units is not { } units)
        {
            faults.Add(1, "units", "not said",
                "say whether the file is in metric units, in standard ones (°F, inches, mph) or in tenths");
            return 0;
        }
        using var csv = CsvReader.Create(text, new CsvReaderOptions
        {
            Separator = ',',
            AllowLineBreaksInQuotes = false,
            TrackLineNumbers = true,
            FieldCountMismatch = CsvFieldCountHandling.Skip,
            OnMalformedRecord = record => Report(record, faults),
        });
        var date = Index(csv.Headers, IsDate);
        var station = Index(csv.Headers, name => name == "STATION");
        if (date is null || (station is null && hints.StationId is null))
        {
            faults.Add(1, "column", date is null ? "no DATE" : "no STATION, and no station was named", Columns);
            return 0;
        }
        var cells = csv.Headers.Index()
            .Where(column => WideTable.Find(column.Item) is not null)
            .Select(column => (Element: WideTable.Find(column.Item)!.Value, column.Index,
                Attributes: Index(csv.Headers, name => name == column.Item + WideTable.Attributes)))
            .ToList();
        foreach (var repeated in cells.GroupBy(cell => cell.Element).Where(column => column.Count() > 1))
            faults.Add(1, "column", repeated.Key.Code(), "each column once");
        var table = new WideTable(units, days, faults);
        var line = 1;
        while (csv.Read())
        {
            line = (int)csv.LineNumber;
            var id = station is { } at ? csv.GetString(at) : hints.StationId;
            if (!table.TryStart(line, id, csv.GetString(date.Value)))
                continue;
            foreach (var (element, index, attributes) in cells)
                table.AddCell(element, csv.GetString(index), attributes is { } flags ? csv.GetString(flags) : "");
        }
        return line;
    }

    private static bool IsDate(string name) => name is "DATE" or "date";

    private static int? Index(IReadOnlyList<string> names, Func<string, bool> isMeant) =>
        names.Index().Where(column => isMeant(column.Item)).Select(column => (int?)column.Index).FirstOrDefault();

    private static void Report(CsvMalformedRecord record, FaultCollector faults) => faults.Add(
        (int)record.LineNumber, "line", record.RawRecord, record.Reason == CsvMalformedReason.FieldCountMismatch
            ? "as many fields as the first line has"
            : "quotes around a whole field, and a quote within doubled");
}
