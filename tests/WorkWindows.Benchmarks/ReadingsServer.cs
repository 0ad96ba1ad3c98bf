using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Benchmarks;

/// <summary>A server with the settings that the service starts its own with, and one organization.</summary>
internal sealed class ReadingsServer : IAsyncDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"wb-{Guid.NewGuid():N}"[..11]);
    private readonly LocalCluster _cluster;
    private readonly Organization _organization = new() { Name = "Load", TimeZone = "UTC", PostalAddress = "" };

    private ReadingsServer()
    {
        _cluster = new LocalCluster(_folder, binFolder: null, settings: "", NullLogger.Instance);
        Address = DatabaseAddress.Of(_cluster.ConnectionString);
        Current.Set(_organization.Id);
    }

    public DatabaseAddress Address { get; }

    public CurrentOrganization Current { get; } = new();

    public static async Task<ReadingsServer> StartAsync()
    {
        var server = new ReadingsServer();
        await server._cluster.StartAsync(CancellationToken.None);
        await DatabaseMigrator.MigrateAsync(server.Address, CancellationToken.None);
        await using var db = server.Open();
        db.Add(server._organization);
        await db.SaveChangesAsync();
        return server;
    }

    /// <summary>The database as the service sees it.</summary>
    public WorkWindowsDb Open()
    {
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, Address.App);
        return new(options.AddInterceptors(new OrganizationOnConnection(Current)).Options);
    }

    public async Task ExecuteAsync(string sql) => await ScalarAsync(sql);

    /// <summary>The size of a table, its partitions included, by one of PostgreSQL's functions.</summary>
    public async Task<double> MegabytesAsync(string table, string function) => (double)(await ScalarAsync($"""
        select (coalesce((select sum({function}(relid)) from pg_partition_tree('{table}')), {function}('{table}'))
          / 1048576.0)::float8
        """))!;

    public async Task<long> CountAsync(string table) => (long)(await ScalarAsync($"select count(*) from {table}"))!;

    public ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        _cluster.Stop();
        _cluster.Dispose();
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    private async Task<object?> ScalarAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(Address.Owner);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        return await command.ExecuteScalarAsync();
    }
}
