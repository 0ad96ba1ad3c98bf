using System.Collections.Immutable;
using System.Text;
using CsvHelper;
using NodaTime;

namespace WorkWindows.Feeds.Stations;

/// <summary>A CSV file of one's own, whose heading names elements and units: docs/feeds/plain-csv.md.</summary>
internal static class PlainCsvReader
{
    /// <summary>Values may be missing, but a day cannot be.</summary>
    private const string Heading =
        "a first line with date or dayStart and at least one element with its unit, such as "
        + "date,minTemperature [degC],gust [mph]";

    public static bool IsHeading(string line) =>
        line.Split(',').Select(name => name.Trim('"', ' ')).Any(PlainDates.IsHeading);

    public static int Read(ReadOnlyMemory<byte> text, string? stationId, StationDays days, FaultCollector faults)
    {
        if (text.Span is [0xEF, 0xBB, 0xBF, ..])
            text = text[3..];
        using var csv = CsvReader.Create(text, new CsvReaderOptions
        {
            Separator = ',',
            TrimWhitespace = true,
            TrimInsideQuotes = true,
            AllowLineBreaksInQuotes = false,
            TrackLineNumbers = true,
            FieldCountMismatch = CsvFieldCountHandling.Skip,
            OnMalformedRecord = record => faults.Add(
                (int)record.LineNumber, "line", record.RawRecord, "as many fields as the first line has"),
        });
        var columns = Columns(csv.Headers, faults);
        var dates = csv.Headers.Index().Where(column => PlainDates.IsHeading(column.Item)).ToList();
        if (stationId is null)
            faults.Add(1, "station", "not said", "say which station the file is of; it does not");
        if (dates.Count != 1 || columns.IsEmpty)
            faults.Add(1, "columns", string.Join(",", csv.Headers), Heading);
        if (faults.Any)
            return 0;
        var station = Encoding.ASCII.GetBytes(stationId!);
        var read = PlainDates.Reader(dates[0].Item);
        var line = 1;
        while (csv.Read())
        {
            line = (int)csv.LineNumber;
            var date = csv.GetString(dates[0].Index);
            if (read.Date(date) is { Year: >= 1700 and <= 2200 } day)
                ReadLine(csv, line, day, station, columns, days, faults);
            else
                faults.Add(line, dates[0].Item, date, read.Accepted);
        }
        return line;
    }

    private static ImmutableArray<(int Index, PlainColumn Column)> Columns(
        IReadOnlyList<string> names, FaultCollector faults)
    {
        var columns = ImmutableArray.CreateBuilder<(int Index, PlainColumn Column)>();
        foreach (var (index, name) in names.Index().Where(column => !PlainDates.IsHeading(column.Item)))
        {
            if (PlainColumn.Find(name) is not { } column)
                faults.Add(1, "column", name, PlainColumn.Accepted);
            else if (columns.Any(known => known.Column.Element == column.Element))
                faults.Add(1, "column", name, "each element once");
            else
                columns.Add((index, column));
        }
        return columns.ToImmutable();
    }

    private static void ReadLine(
        CsvReader csv, int line, LocalDate day, byte[] station, ImmutableArray<(int, PlainColumn)> columns,
        StationDays days, FaultCollector faults)
    {
        days.AddLine(line, station, isUsed: true);
        foreach (var (index, column) in columns)
        {
            var text = csv.GetString(index);
            if (text.Length == 0)
                continue;
            if (PlainColumn.Number(text) is { } value)
            {
                days.Add(
                    line, (day.Year * 100 + day.Month) * 100 + day.Day, column.Element, value, column.Unit, ' ', ' ',
                    column.Name);
            }
            else
            {
                faults.Add(line, column.Name, text, $"{column.Unit.Accepted(column.Element.Reading())}, or nothing");
            }
        }
    }
}
