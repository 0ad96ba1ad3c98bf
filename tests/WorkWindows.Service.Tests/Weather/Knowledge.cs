using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using NodaTime.Testing;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>A station of an organization of its own, to which readings come at times of the test's choice.</summary>
internal sealed record Knowledge(TestDatabase Database, Guid Organization, Guid StationId)
{
    public static readonly LocalDate FirstOfMarch = new(2026, 3, 1);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static async Task<Knowledge> CreateAsync(TestDatabase database)
    {
        var organization = await database.AddOrganizationAsync("Org");
        return new(
            database, organization, await GivenStation.StoreAsync(database, organization, "USC00200001", 42.7, -84.5));
    }

    /// <summary>A minimum of a day of March.</summary>
    public static DailyReading Min(int day, double value, char? flag = null) =>
        new(FirstOfMarch.PlusDays(day - 1), DailyElement.MinTemperatureC, value, flag);

    public async Task<ImportCounts> MergeAsync(Instant at, params DailyReading[] readings)
    {
        var current = new CurrentOrganization();
        current.Set(Organization);
        await using var db = Database.Open(Organization);
        await using var change = await OrganizationChange.BeginAsync(db, current, Cancellation);
        var station = await db.Stations.SingleAsync(row => row.Id == StationId, Cancellation);
        var counts = await new StationReadings(db, new FakeClock(at)).MergeAsync(station, readings, Cancellation);
        await db.SaveChangesAsync(Cancellation);
        await change.CommitAsync(Cancellation);
        return counts;
    }

    /// <summary>What was known of March on a moment, as in '1:-3 2:4', rejected values left out.</summary>
    public async Task<string> KnownAsync(Instant asOf)
    {
        await using var db = Database.Open(Organization);
        using var cache = new MemoryCache(new MemoryCacheOptions());
        var station = await db.Stations.AsNoTracking().SingleAsync(row => row.Id == StationId, Cancellation);
        var series = await new WeatherRecords(db, cache).ObservedAsync(station, asOf, Cancellation);
        return series[DailyElement.MinTemperatureC] is not { } column ? "" : string.Join(' ', Enumerable.Range(1, 31)
            .Where(day => !double.IsNaN(column[FirstOfMarch.PlusDays(day - 1)]))
            .Select(day => $"{day}:{column[FirstOfMarch.PlusDays(day - 1)]}"));
    }
}
