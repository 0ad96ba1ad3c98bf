using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace WorkWindows.Service.Hosting;

/// <summary>Says when and where the service can be reached.</summary>
internal sealed partial class ReadyNotice(IServer server, ILogger<ReadyNotice> logger) : IHostedLifecycleService
{
    public Task StartedAsync(CancellationToken cancellationToken)
    {
        LogReady(string.Join(", ", server.Features.Get<IServerAddressesFeature>()?.Addresses ?? []));
        return Task.CompletedTask;
    }

    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(LogLevel.Information, "Ready at {Addresses} (Ctrl-C stops)")]
    private partial void LogReady(string addresses);
}
