using System.Globalization;
using WorkWindows.Engine.Weather;
using WorkWindows.Tests;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>A cooperative station with thirty years of temperatures.</summary>
internal sealed record TsvStation(string Id, string Name, string State, WeatherPoint Point, double ElevationM)
{
    private static readonly string[] Ids =
    [
        "USC00111280", "USC00115901", "USC00115943", "USC00118740", "USC00123418", "USC00125237", "USC00129557",
        "USC00131402", "USC00138688", "USC00336196", "USC00338822", "USC00339312",
    ];

    public static IReadOnlyList<TsvStation> All { get; } = Read();

    // id 1-6, latitude 7-15, longitude 16-25, elevation m 26-32, state 33-35, name 36-66.
    private static List<TsvStation> Read()
    {
        var lines = File.ReadLines(ProjectFiles.Reference("stations/station-coordinates.txt"))
            .ToLookup(line => $"USC00{line[..6]}");
        return [.. Ids.Select(id => Of(id, lines[id].First()))];
    }

    private static TsvStation Of(string id, string line) => new(
        id, CultureInfo.InvariantCulture.TextInfo.ToTitleCase(line[36..66].Trim().ToLowerInvariant()), line[33..35].Trim(),
        new(id, Number(line[6..15]), Number(line[15..25])), Number(line[25..32]));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
