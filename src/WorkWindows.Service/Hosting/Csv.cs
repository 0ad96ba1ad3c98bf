namespace WorkWindows.Service.Hosting;

/// <summary>Tables for spreadsheets (RFC 4180).</summary>
internal static class Csv
{
    public static string Of(IEnumerable<IReadOnlyList<string>> rows) =>
        string.Concat(rows.Select(cells => string.Join(',', cells.Select(Cell)) + "\r\n"));

    /// <summary>A text that a spreadsheet would take for a formula is marked as a text.</summary>
    private static string Cell(string text)
    {
        if (text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal))
            text = $"'{text}";
        return text.AsSpan().IndexOfAny("\",\r\n") < 0
            ? text
            : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
