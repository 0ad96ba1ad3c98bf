using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql;
using Shouldly;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Storage;

public sealed class DatabaseMigratorTests(DatabaseFixture server)
{
    [Fact]
    public async Task Migrate_IsSafe_WhenSeveralInstancesStartOnAnEmptyServer()
    {
        var address = server.AddressOfNew();

        await Task.WhenAll(Enumerable.Range(0, 3).Select(
            _ => DatabaseMigrator.MigrateAsync(address, TestContext.Current.CancellationToken)));

        await using (var connection = new NpgsqlConnection(address.App))
        {
            await connection.OpenAsync();
            (await new NpgsqlCommand("select count(*) from properties", connection).ExecuteScalarAsync()).ShouldBe(0L);
            (await new NpgsqlCommand("select count(*) from hangfire.job", connection).ExecuteScalarAsync()).ShouldBe(
                0L);
        }

        await server.DropAsync(address);
    }

    [Fact]
    public async Task Migrate_TakesReadingsOfEarlierVersions_AsKnownFromTheBeginning()
    {
        var address = server.AddressOfNew();
        await DatabaseMigrator.MigrateAsync(address, TestContext.Current.CancellationToken);
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, address.Owner);
        await using (var db = new WorkWindowsDb(options.Options))
        {
            var migrator = db.GetService<IMigrator>();
            await migrator.MigrateAsync("RulesOfOrganizations", TestContext.Current.CancellationToken);
            await db.Database.ExecuteSqlRawAsync(
                """
                insert into organizations (id, name, time_zone, postal_address, shift_start, shift_end)
                values ('00000000-0000-7000-8000-000000000001', 'Old', 'UTC', '', '08:00', '17:00');
                insert into stations (id, organization_id, ghcn_id, name, latitude, longitude, whole_fahrenheit,
                  record_version, temperature_coverage, wind_coverage)
                values ('00000000-0000-7000-8000-000000000002', '00000000-0000-7000-8000-000000000001', 'USC00200001',
                  'Larkspur', 42, -84, true, 1, 1, 0);
                insert into station_readings (station_id, element, date, organization_id, value)
                values ('00000000-0000-7000-8000-000000000002', 0, '1999-01-01', '00000000-0000-7000-8000-000000000001', -9);
                """, TestContext.Current.CancellationToken);
            await migrator.MigrateAsync(cancellationToken: TestContext.Current.CancellationToken);
            var station = await db.Stations.SingleAsync(TestContext.Current.CancellationToken);

            (await KnownReadings.Of(db, station, Instant.FromUtc(2000, 1, 1, 0, 0))
                .SingleAsync(TestContext.Current.CancellationToken)).Value.ShouldBe(-9);
        }
        await server.DropAsync(address);
    }

    /// <summary>
    /// A change that is made from a migration's model, as when one is undone, must not lose a column.
    /// </summary>
    [Fact]
    public void Migrations_EndWithTheModelThatTheServiceHas()
    {
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, "Host=none");
        using var db = new WorkWindowsDb(options.Options);
        var migrations = db.GetService<IMigrationsAssembly>();
        var newest = migrations.CreateMigration(migrations.Migrations.Values.Last(), db.Database.ProviderName!);
        var model = db.GetService<IModelRuntimeInitializer>().Initialize(newest.TargetModel);

        db.GetService<IMigrationsModelDiffer>()
            .GetDifferences(model.GetRelationalModel(), db.GetService<IDesignTimeModel>().Model.GetRelationalModel())
            .Select(operation => operation.GetType().Name).ShouldBeEmpty();
    }
}
