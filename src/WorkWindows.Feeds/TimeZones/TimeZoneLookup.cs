using System.Collections.Immutable;
using System.Reflection;

namespace WorkWindows.Feeds.TimeZones;

/// <summary>
/// The IANA time zone of a position, from a quadtree of the world's zones.
/// </summary>
/// <remarks>
/// Cells at a border answer with one of their zones, so that within 30 km the answer may be the other side's.
/// The data and its licence: <c>tz-lookup.licence.md</c> beside this file.
/// </remarks>
public static class TimeZoneLookup
{
    private const int Columns = 48;
    private const int Rows = 24;

    /// <summary>A cell is two base-56 digits, so leaves are numbered from the top of 56² down.</summary>
    private const int Codes = 56 * 56;

    private static readonly (string Tree, ImmutableArray<string> Zones) Data = Load();

    /// <returns>An IANA name; at sea outside territorial waters one of the <c>Etc/GMT</c> zones.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The position is not on the globe.</exception>
    public static string Find(double latitudeDeg, double longitudeDeg)
    {
        if (latitudeDeg is not (>= -90 and <= 90))
            throw new ArgumentOutOfRangeException(
                nameof(latitudeDeg), latitudeDeg, "Latitude is −90 to 90 degrees.");
        if (longitudeDeg is not (>= -180 and <= 180))
            throw new ArgumentOutOfRangeException(
                nameof(longitudeDeg), longitudeDeg, "Longitude is −180 to 180 degrees.");

        // The divisors are a little more than 360 and 180, so that the last meridian and pole fall into the last cell.
        var x = Columns * (180 + longitudeDeg) / 360.00000000000006;
        var y = Rows * (90 - latitudeDeg) / 180.00000000000003;
        var (column, row) = ((int)x, (int)y);
        var node = -1;
        var code = CodeAt(2 * (Columns * row + column));
        while (code + Data.Zones.Length < Codes)
        {
            node += code + 1;
            x = 2 * (x - column) % 2;
            y = 2 * (y - row) % 2;
            (column, row) = ((int)x, (int)y);
            code = CodeAt(8 * node + 4 * row + 2 * column + 2 * Columns * Rows);
        }
        return Data.Zones[code + Data.Zones.Length - Codes];
    }

    private static int CodeAt(int index) => 56 * (Data.Tree[index] - '#') + (Data.Tree[index + 1] - '#');

    private static (string, ImmutableArray<string>) Load()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("tz-lookup.txt")
            ?? throw new InvalidOperationException("The time zone data is not embedded in the assembly.");
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return (lines[0], [.. lines[1..]]);
    }
}
