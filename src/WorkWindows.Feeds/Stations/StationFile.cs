using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>Reads the record of one station in any form that docs/files.md describes, plain or gzip.</summary>
/// <remarks>
/// Source: Menne et al. 2012, Global Historical Climatology Network - Daily, doi:10.7289/V5D21VHZ. Which of the
/// forms a file has is seen from its bytes, so its name does not matter.
/// </remarks>
public static class StationFile
{
    /// <summary>Ten times the largest station file: more is not a station.</summary>
    private const int LargestBytes = 256 * 1024 * 1024;

    private const string Forms =
        "a GHCN-Daily station file: lines of 269 characters that begin with a station id (.dly), lines "
        + "ID,YYYYMMDD,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBS-TIME without a heading (by-station CSV), a heading with "
        + "DATE and elements such as TMAX, or YYYYMMDD and three values with tabs between; or a file of one's own "
        + "with a heading such as date,minTemperature [degC]";

    /// <param name="stream">The file.</param>
    /// <param name="hints">What the file does not say itself.</param>
    /// <returns>The station's record, or every fault of the file.</returns>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static StationImport Read(Stream stream, StationFileHints? hints = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var faults = new FaultCollector();
        var text = StationBytes.Read(stream, LargestBytes, faults);
        return faults.Any ? new(null, faults.ToReport()) : Read(text, hints ?? new(), faults);
    }

    /// <summary>The same of a reply.</summary>
    internal static StationImport Read(ReadOnlyMemory<byte> bytes, StationFileHints hints)
    {
        using var stream = new MemoryStream(bytes.ToArray());
        return Read(stream, hints);
    }

    private static StationImport Read(byte[] text, StationFileHints hints, FaultCollector faults)
    {
        var days = new StationDays(faults, hints.Today);
        var linesRead = 0;
        switch (FormOf(text))
        {
            case Form.Empty:
                faults.Add(null, "file", "empty", Forms);
                break;
            case Form.FixedWidth:
                linesRead = DlyReader.Read(new StationLines(text), days, faults);
                break;
            case Form.Csv:
                linesRead = StationCsvReader.Read(new StationLines(text), Wanted(text, hints), days, faults);
                break;
            case Form.Wide:
                linesRead = WideCsvReader.Read(text, hints, days, faults);
                break;
            case Form.Tabs:
                linesRead = TabsReader.Read(new StationLines(text), hints.StationId, days, faults);
                break;
            case Form.Plain:
                linesRead = PlainCsvReader.Read(text, hints.StationId, days, faults);
                break;
            case Form.Other:
                faults.Add(1, "file", FirstLine(text), Forms);
                break;
        }
        var station = days.Build(linesRead);
        return faults.Any ? new(null, faults.ToReport()) : new(station, FaultReport.None);
    }

    /// <returns>The station whose lines count; none where the file has one station, whichever it is.</returns>
    private static byte[] Wanted(ReadOnlySpan<byte> text, StationFileHints hints)
    {
        var id = Encoding.ASCII.GetBytes(hints.StationId ?? "");
        return text.IndexOf(id) >= 0 ? id : [];
    }

    private static Form FormOf(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty)
            return Form.Empty;
        if (text.Length > StationIds.Length && StationIds.IsId(text[..StationIds.Length]))
        {
            var next = (char)text[StationIds.Length];
            return next == ',' ? Form.Csv : char.IsAsciiDigit(next) ? Form.FixedWidth : Form.Other;
        }
        if (text.Length > 8 && text[8] == '\t' && StationCsvReader.Date(text[..8]) is not null)
            return Form.Tabs;
        var heading = FirstLine(text);
        return WideCsvReader.IsHeading(heading) ? Form.Wide
            : PlainCsvReader.IsHeading(heading) ? Form.Plain
            : Form.Other;
    }

    private static string FirstLine(ReadOnlySpan<byte> text)
    {
        var end = text.IndexOf((byte)'\n');
        return Encoding.UTF8.GetString(end < 0 ? text : text[..end]).Trim('\uFEFF', '\r');
    }

    private enum Form
    {
        Empty,
        FixedWidth,
        Csv,
        Wide,
        Tabs,
        Plain,
        Other,
    }
}
