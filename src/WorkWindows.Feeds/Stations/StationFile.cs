using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>Reads a GHCN-Daily station file: fixed-width or by-station CSV, plain or gzip.</summary>
/// <remarks>
/// Source: Menne et al. 2012, Global Historical Climatology Network - Daily, doi:10.7289/V5D21VHZ. Which of the
/// forms a file has is seen from its bytes, so its name does not matter.
/// </remarks>
public static class StationFile
{
    /// <summary>Ten times the largest station file: more is not a station.</summary>
    private const int LargestBytes = 256 * 1024 * 1024;

    private const string Forms =
        "a GHCN-Daily station file: lines of 269 characters that begin with a station id (.dly), or lines "
        + "ID,YYYYMMDD,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBS-TIME without a heading (by-station CSV)";

    /// <returns>The station's record, or every fault of the file.</returns>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static StationImport Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var faults = new FaultCollector();
        var text = StationBytes.Read(stream, LargestBytes, faults);
        return faults.Any ? new(null, faults.ToReport()) : Read(text, faults);
    }

    private static StationImport Read(ReadOnlySpan<byte> text, FaultCollector faults)
    {
        var days = new StationDays(faults);
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
                linesRead = StationCsvReader.Read(new StationLines(text), days, faults);
                break;
            case Form.Other:
                faults.Add(1, "file", FirstLine(text), Forms);
                break;
        }
        var station = days.Build(linesRead);
        return faults.Any ? new(null, faults.ToReport()) : new(station, FaultReport.None);
    }

    private static Form FormOf(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty)
            return Form.Empty;
        if (text.Length <= StationIds.Length || !StationIds.IsId(text[..StationIds.Length]))
            return Form.Other;
        var next = (char)text[StationIds.Length];
        return next == ',' ? Form.Csv : char.IsAsciiDigit(next) ? Form.FixedWidth : Form.Other;
    }

    private static string FirstLine(ReadOnlySpan<byte> text)
    {
        var end = text.IndexOf((byte)'\n');
        return Encoding.Latin1.GetString(end < 0 ? text : text[..end]).TrimEnd('\r');
    }

    private enum Form
    {
        Empty,
        FixedWidth,
        Csv,
        Other,
    }
}
