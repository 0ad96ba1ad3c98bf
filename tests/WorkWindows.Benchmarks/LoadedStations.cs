using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Benchmarks;

/// <summary>Stations with generated values: only how many there are matters.</summary>
internal sealed class LoadedStations(ReadingsServer server, int stations, int years)
{
    public static readonly DailyElement[] Elements =
        [DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC, DailyElement.PrecipitationMm];

    private readonly Random _random = new(20261126);

    public LocalDate First { get; } = new(1985, 1, 1);

    public int Years { get; } = years;

    public int Days => Period.DaysBetween(First, First.PlusYears(Years));

    public List<Guid> Stations { get; } = [];

    public SteppingClock Clock { get; } = new();

    /// <returns>How many rows were stored.</returns>
    public async Task<long> LoadAsync()
    {
        for (var number = 0; number < stations; number++)
        {
            var station = new Station
            {
                GhcnId = $"USC{number:00000000}",
                Name = $"Station {number}",
                Latitude = 42,
                Longitude = -84,
                WholeFahrenheit = true,
            };
            await using (var db = server.Open())
            {
                db.Add(station);
                await db.SaveChangesAsync();
            }
            Stations.Add(station.Id);
            await MergeAsync(station.Id, 0, Days);
        }
        return await server.CountAsync("station_readings");
    }

    /// <summary>Other values for the last days of a station.</summary>
    public Task CorrectAsync(Guid station, int days) => MergeAsync(station, Days - days, days);

    private async Task MergeAsync(Guid id, int from, int days)
    {
        List<DailyReading> readings =
        [
            .. Enumerable.Range(from, days).SelectMany(day => Elements.Select(element =>
                new DailyReading(First.PlusDays(day), element, Value(element, day), null))),
        ];
        await using var db = server.Open();
        await using var change = await OrganizationChange.BeginAsync(db, server.Current, CancellationToken.None);
        var station = await db.Stations.SingleAsync(row => row.Id == id);
        await new StationReadings(db, Clock).MergeAsync(station, readings, CancellationToken.None);
        await db.SaveChangesAsync();
        await change.CommitAsync(CancellationToken.None);
    }

    /// <summary>Tenths of a degree or millimetre, as the files have them.</summary>
    private double Value(DailyElement element, int day) => Math.Round(
        element == DailyElement.PrecipitationMm
            ? Math.Max(0, _random.NextDouble() * 40 - 25)
            : 10 - 15 * Math.Cos(day * 2 * Math.PI / 365.25) + 10 * _random.NextDouble()
                + (element == DailyElement.MaxTemperatureC ? 12 : 0),
        1);
}

/// <summary>A minute later at each look.</summary>
internal sealed class SteppingClock : IClock
{
    public Instant Now { get; private set; } = Instant.FromUtc(2026, 1, 1, 0, 0);

    public Instant GetCurrentInstant() => Now += Duration.FromMinutes(1);
}
