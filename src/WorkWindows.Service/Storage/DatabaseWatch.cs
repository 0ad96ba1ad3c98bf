namespace WorkWindows.Service.Storage;

/// <summary>
/// Looks every few seconds whether the private cluster still runs. A given server is not ours to start.
/// </summary>
internal sealed class DatabaseWatch(DatabaseServer server) : BackgroundService
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Interval);
        while (await timer.WaitForNextTickAsync(stoppingToken))
            await server.ReviveAsync(stoppingToken);
    }
}
