using DotNet.Testcontainers.Builders;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Testcontainers.PostgreSql;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;

[assembly: AssemblyFixture(typeof(DatabaseFixture))]

namespace WorkWindows.Service.Tests.Storage;

/// <summary>
/// One server for all tests: the one WORKWINDOWS_TEST_DATABASE names, else a container where an engine answers, else a
/// private cluster of the local programs; with none of them the tests fail. The migrated template is cloned per class.
/// </summary>
public sealed class DatabaseFixture : IAsyncLifetime
{
    public const string Variable = "WORKWINDOWS_TEST_DATABASE";

    /// <summary>Not UTC, so that a test notices when the server's zone leaks into an answer.</summary>
    private const string ServerZone = "America/Chicago";

    private const string Image = "postgres:15.18";

    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"ww-{Guid.NewGuid():N}"[..11]);
    private readonly string _template = $"ww_template_{Guid.NewGuid():N}";
    private LocalCluster? _cluster;
    private PostgreSqlContainer? _container;
    private string _server = "";

    public async ValueTask InitializeAsync()
    {
        _server = await ServerAsync();
        // Unpooled: a database with open connections cannot be cloned.
        await DatabaseMigrator.MigrateAsync(Address(_template, pooling: false), CancellationToken.None);
    }

    public async Task<DatabaseAddress> CloneAsync()
    {
        var address = AddressOfNew();
        await ExecuteAsync($"create database {Name(address)} template {_template}");
        return address;
    }

    /// <summary>Where a database could be that does not exist yet.</summary>
    public DatabaseAddress AddressOfNew() => Address($"ww_test_{Guid.NewGuid():N}", pooling: true);

    public Task DropAsync(DatabaseAddress address) =>
        ExecuteAsync($"drop database {Name(address)} with (force)");

    public async ValueTask DisposeAsync()
    {
        await ExecuteAsync($"drop database if exists {_template} with (force)");
        if (_container is not null)
            await _container.DisposeAsync();
        if (_cluster is not null)
        {
            _cluster.Stop();
            Directory.Delete(_folder, recursive: true);
        }
    }

    private async Task<string> ServerAsync()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
            return Say($"the server of {Variable}", given);
        try
        {
            _container =
                new PostgreSqlBuilder(Image).WithCommand("-c", $"timezone={ServerZone}", "-c", "fsync=off").Build();
            await _container.StartAsync();
            return Say($"a container of {Image}", _container.GetConnectionString());
        }
        catch (DockerUnavailableException)
        {
            _cluster = new LocalCluster(
                _folder, Environment.GetEnvironmentVariable(PostgresBinaries.Variable),
                $"timezone = '{ServerZone}'\nfsync = off\nfull_page_writes = off\nmax_connections = 300\n", NullLogger.Instance);
            await _cluster.StartAsync(CancellationToken.None);
            return Say("a private cluster of the local programs", _cluster.ConnectionString);
        }
    }

    private static string Say(string server, string connectionString)
    {
        Console.WriteLine($"The tests use {server}.");
        return connectionString;
    }

    private static string? Name(DatabaseAddress address) => new NpgsqlConnectionStringBuilder(address.Owner).Database;

    private DatabaseAddress Address(string database, bool pooling) => DatabaseAddress.Of(
        new NpgsqlConnectionStringBuilder(_server) { Database = database, Pooling = pooling }.ConnectionString);

    private async Task ExecuteAsync(string sql)
    {
        var maintenance = new NpgsqlConnectionStringBuilder(_server) { Database = "postgres", Pooling = false };
        await using var connection = new NpgsqlConnection(maintenance.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }
}
