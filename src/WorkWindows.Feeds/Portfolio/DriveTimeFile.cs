using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>A line of a file of drive times.</summary>
/// <param name="Line">The line.</param>
/// <param name="From">The key of a property or the name of a crew.</param>
/// <param name="To">The same of where the drive ends.</param>
/// <param name="Minutes">How long it takes, minutes.</param>
public sealed record DriveTimeRow(int Line, string From, string To, double Minutes);

/// <summary>What was read of a file of drive times: all of it, or nothing and everything that is wrong in it.</summary>
public sealed record DriveTimes(ImmutableArray<DriveTimeRow> Rows, FaultReport Faults);

/// <summary>Reads a CSV file of drive times; its form is described in docs/files.md.</summary>
public static class DriveTimeFile
{
    /// <summary>No drive of a working day is longer, minutes.</summary>
    public const double LongestMinutes = 1_440;

    private static readonly CsvTable Table = new(["from", "to", "minutes"], [], "drives");

    /// <param name="stream">The file.</param>
    /// <param name="knownPlaces">Keys of properties and names of crews.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static DriveTimes Read(Stream stream, IReadOnlySet<string> knownPlaces)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(knownPlaces);
        var faults = new FaultCollector();
        var text = Utf8Text.Read(stream, faults);
        if (faults.Any)
            return new([], faults.ToReport());
        var rows = Table.Read(text, faults, (csv, found) => Row(csv, knownPlaces, found));
        foreach (var twice in rows.GroupBy(row => (row.From, row.To)).SelectMany(same => same.Skip(1)))
            faults.Add(twice.Line, "to", twice.To, "each drive once", twice.From);
        return faults.Any ? new([], faults.ToReport()) : new([.. rows], FaultReport.None);
    }

    private static DriveTimeRow Row(CsvReader csv, IReadOnlySet<string> knownPlaces, FaultCollector faults)
    {
        var line = (int)csv.LineNumber;
        var (from, to, time) = (Field("from"), Field("to"), Field("minutes"));
        foreach (var (column, place) in new[] { ("from", from), ("to", to) })
        {
            if (!knownPlaces.Contains(place))
                faults.Add(line, column, place, "the key of a property or the name of a crew with a base", from);
        }
        if (!double.TryParse(time, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var minutes)
            || minutes > LongestMinutes)
        {
            faults.Add(line, "minutes", time, $"minutes from 0 to {LongestMinutes} with a decimal point, such as 42.5", from);
        }
        return new(line, from, to, minutes);

        string Field(string column) => csv.TryGetFieldIndex(column, out var index) ? csv.GetString(index) : "";
    }
}
