using System.Buffers;
using System.Net;
using System.Net.Sockets;
using SmtpServer;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using ServiceProvider = SmtpServer.ComponentModel.ServiceProvider;

namespace WorkWindows.Benchmarks;

/// <summary>An SMTP server on loopback that takes every mail and counts them.</summary>
internal sealed class CountingMailServer : MessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _running;
    private int _received;

    public CountingMailServer()
    {
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }
        var services = new ServiceProvider();
        services.Add(this);
        var options = new SmtpServerOptionsBuilder().ServerName("localhost")
            // A whole night's mails may go over one connection; the server's own limit would cut it after two minutes.
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))
                .SessionTimeout(TimeSpan.FromHours(1)))
            .Build();
        _running = new SmtpServer.SmtpServer(options, services).StartAsync(_stop.Token);
    }

    public int Port { get; }

    public int Received => _received;

    public override Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer,
        CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref _received);
        return Task.FromResult(SmtpResponse.Ok);
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }
}
