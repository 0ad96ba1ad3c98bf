using System.Net.Sockets;
using Npgsql;

namespace WorkWindows.Service.Storage;

/// <summary>Has the database running and up to date before anything else starts, and stops it last.</summary>
internal sealed partial class DatabaseStartup(DatabaseServer server, ILogger<DatabaseStartup> logger)
    : IHostedLifecycleService
{
    public async Task StartingAsync(CancellationToken cancellationToken)
    {
        await server.StartAsync(cancellationToken);
        LogMigrating();
        try
        {
            await DatabaseMigrator.MigrateAsync(server.Address, cancellationToken);
        }
        catch (Exception fault) when (fault.GetBaseException() is NpgsqlException or SocketException)
        {
            throw new SetupException($"The database cannot be used: {fault.GetBaseException().Message}", fault);
        }
    }

    public Task StoppedAsync(CancellationToken cancellationToken)
    {
        server.Stop();
        return Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(LogLevel.Information, "Bringing the database up to date")]
    private partial void LogMigrating();
}
