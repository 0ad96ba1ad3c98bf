using System.Diagnostics;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;
using WorkWindows.Tests;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>How long a station's file takes to read.</summary>
internal static class ParseSpeed
{
    private const int Runs = 5;

    private static readonly string[] Files =
    [
        "stations/dly/USW00014922.core.dly", "stations/dly/USW00014922.full.dly.gz",
    ];

    public static string Section()
    {
        var rows = Files.Select(name =>
        {
            var bytes = File.ReadAllBytes(ProjectFiles.Reference(name));
            var best = TimeSpan.MaxValue;
            var (days, values) = (0, 0);
            for (var run = 0; run < Runs; run++)
            {
                var started = Stopwatch.GetTimestamp();
                var readings = StationFile.Read(new MemoryStream(bytes)).Station!.Readings;
                best = TimeSpan.FromTicks(Math.Min(best.Ticks, Stopwatch.GetElapsedTime(started).Ticks));
                (days, values) = (Days(readings), readings.Length);
            }
            var years = days / 365.25;
            return $"| {Path.GetFileName(name)} | {years:0} | {values:N0} | {best.TotalMilliseconds:0} ms "
                + $"| {best.TotalMilliseconds * 40 / years:0} ms |";
        });
        return $"""
            ## Reading a station's file

            The best of {Runs} runs on one core, a file in memory. The aim is 300 ms for 40 years.

            | file | years | values | time | for 40 years |
            | --- | --- | --- | --- | --- |
            {string.Join('\n', rows)}

            """;
    }

    private static int Days(IReadOnlyCollection<DailyReading> readings) =>
        Period.DaysBetween(readings.Min(reading => reading.Date), readings.Max(reading => reading.Date)) + 1;
}
