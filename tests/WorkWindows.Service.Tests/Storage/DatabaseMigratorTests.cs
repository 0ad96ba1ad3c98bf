using Npgsql;
using Shouldly;
using WorkWindows.Service.Storage;

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
            (await new NpgsqlCommand("select count(*) from hangfire.job", connection).ExecuteScalarAsync()).ShouldBe(0L);
        }

        await server.DropAsync(address);
    }
}
