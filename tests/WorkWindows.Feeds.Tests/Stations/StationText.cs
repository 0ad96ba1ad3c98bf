using System.Text;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Tests.Stations;

/// <summary>Writes station files line by line.</summary>
internal static class StationText
{
    public const string Missing = "-9999   ";

    public static StationImport Read(params IEnumerable<string> lines) =>
        ReadText(string.Concat(lines.Select(line => $"{line}\n")));

    public static StationImport Read(StationFileHints hints, params IEnumerable<string> lines) => StationFile.Read(
        new MemoryStream(Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => $"{line}\n")))), hints);

    public static StationImport ReadText(string text) =>
        StationFile.Read(new MemoryStream(Encoding.Latin1.GetBytes(text)));

    /// <summary>A fixed-width line whose days are absent except those given as day and eight characters.</summary>
    public static string Dly(string heading, params IEnumerable<(int Day, string Group)> days)
    {
        var groups = Enumerable.Repeat(Missing, 31).ToArray();
        foreach (var (day, group) in days)
            groups[day - 1] = group;
        return heading + string.Concat(groups);
    }
}
