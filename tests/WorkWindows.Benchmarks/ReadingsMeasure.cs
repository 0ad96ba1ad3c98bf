using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Weather;

namespace WorkWindows.Benchmarks;

/// <summary>
/// How large decades of readings are and how long the usual questions take, through the service's own code, on a server
/// of its own that is removed afterwards: <c>readings LAYOUT STATIONS YEARS</c>.
/// </summary>
internal sealed class ReadingsMeasure(ReadingsServer server, LoadedStations load)
{
    private const int Repeats = 21;
    private const int DaysCorrected = 30;

    public static async Task<int> RunAsync(string[] arguments)
    {
        if (arguments is not [var layout, var stations, var years] || !ReadingsLayout.All.ContainsKey(layout))
        {
            await Console.Error.WriteLineAsync(
                $"readings LAYOUT STATIONS YEARS, where LAYOUT is one of {string.Join(", ", ReadingsLayout.All.Keys)}.");
            return 2;
        }
        await using var server = await ReadingsServer.StartAsync();
        await server.ExecuteAsync(ReadingsLayout.All[layout]);
        var load = new LoadedStations(
            server, int.Parse(stations, CultureInfo.InvariantCulture), int.Parse(years, CultureInfo.InvariantCulture));
        await new ReadingsMeasure(server, load).RunAsync();
        return 0;
    }

    private async Task RunAsync()
    {
        var watch = Stopwatch.StartNew();
        var rows = await load.LoadAsync();
        Say("rows", rows);
        Say("rows a second, merged with COPY", rows / watch.Elapsed.TotalSeconds);
        await server.ExecuteAsync("vacuum analyze");
        await SaySizeAsync("station_readings");
        await TimeAsync("a station's record, first time, ms", station => ReadAsync(station, load.Clock.Now));
        await TimeAsync("a station's record, again, ms", station => ReadAsync(station, load.Clock.Now));
        await TimeAsync("a year of a station, ms", ReadYearAsync);
        var before = load.Clock.Now;
        await TimeAsync("the correction of a day, ms", station => load.CorrectAsync(station, days: 1));
        foreach (var station in load.Stations)
            await load.CorrectAsync(station, DaysCorrected);
        await server.ExecuteAsync("vacuum analyze");
        Say("superseded rows", await server.CountAsync("superseded_readings"));
        await TimeAsync("a station's record after corrections, ms", station => ReadAsync(station, load.Clock.Now));
        await TimeAsync("a station's record as known before them, ms", station => ReadAsync(station, before));
        await server.ExecuteAsync(ReadingsLayout.Numbered);
        await SaySizeAsync("numbered_readings");
    }

    private async Task SaySizeAsync(string table)
    {
        Say($"{table}, MB", await server.MegabytesAsync(table, "pg_table_size"));
        Say($"indexes of {table}, MB", await server.MegabytesAsync(table, "pg_indexes_size"));
    }

    private async Task ReadAsync(Guid id, Instant asOf)
    {
        await using var db = server.Open();
        using var cache = new MemoryCache(new MemoryCacheOptions());
        var station = await db.Stations.AsNoTracking().SingleAsync(row => row.Id == id);
        var series = await new WeatherRecords(db, cache).ObservedAsync(station, asOf, CancellationToken.None);
        if (series[DailyElement.MinTemperatureC]?.Values.Length != load.Days)
            throw new InvalidOperationException($"The record does not have {load.Days} days.");
    }

    private async Task ReadYearAsync(Guid id)
    {
        await using var db = server.Open();
        var first = load.First.PlusYears(load.Years / 2);
        var last = first.PlusDays(364);
        var read = await db.StationReadings.AsNoTracking()
            .Where(reading => reading.StationId == id && reading.Date >= first && reading.Date <= last).ToListAsync();
        if (read.Count != 365 * LoadedStations.Elements.Length)
            throw new InvalidOperationException($"A year has {read.Count} readings.");
    }

    /// <summary>The median over stations that lie far from each other.</summary>
    private async Task TimeAsync(string what, Func<Guid, Task> once)
    {
        var step = Math.Max(1, load.Stations.Count / Repeats);
        var times = new List<double>();
        foreach (var station in load.Stations.Where((_, index) => index % step == 0))
        {
            var watch = Stopwatch.StartNew();
            await once(station);
            times.Add(watch.Elapsed.TotalMilliseconds);
        }
        Say(what, times.Order().ElementAt(times.Count / 2));
    }

    private static void Say(string what, double figure) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-48}{figure,14:#,0.#}"));
}
