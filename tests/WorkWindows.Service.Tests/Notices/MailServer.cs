using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using ServiceProvider = SmtpServer.ComponentModel.ServiceProvider;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>A real SMTP server on loopback that keeps what it receives.</summary>
internal sealed class MailServer : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource _greeted = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _running;
    private int _sessions;

    /// <param name="port">The port to listen on.</param>
    /// <param name="refuses">The recipient it does not know, or null.</param>
    /// <param name="holds">Whether it keeps every sender waiting before the mail itself is handed over.</param>
    /// <param name="mailsASession">After how many mails it ends a connection with the status 421.</param>
    /// <param name="cuts">Whether it ends each connection when it has taken a mail, without a word.</param>
    /// <param name="refusal">The status with which it refuses.</param>
    public MailServer(
        int port, string? refuses = null, bool holds = false, int mailsASession = int.MaxValue, bool cuts = false,
        int refusal = 550)
    {
        Port = port;
        var services = new ServiceProvider();
        services.Add(new Store(Received, cuts));
        services.Add(new Filter(refuses, refusal, holds, _greeted, mailsASession, Recipients));
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, port)))
            .Build();
        var server = new SmtpServer.SmtpServer(options, services);
        server.SessionCreated += (_, _) => Interlocked.Increment(ref _sessions);
        _running = server.StartAsync(_stop.Token);
    }

    public int Port { get; }

    public ConcurrentQueue<MimeMessage> Received { get; } = new();

    /// <summary>The addresses that it was asked for, whether it knows them or not.</summary>
    public ConcurrentQueue<string> Recipients { get; } = new();

    /// <summary>How many connections there were.</summary>
    public int Sessions => _sessions;

    /// <summary>Completes when a sender has named itself.</summary>
    public Task Greeted => _greeted.Task;

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private sealed class Store(ConcurrentQueue<MimeMessage> received, bool cuts) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer,
            CancellationToken cancellationToken)
        {
            using var content = new MemoryStream(buffer.ToArray());
            received.Enqueue(await MimeMessage.LoadAsync(content, cancellationToken));
            if (cuts)
                ((IDisposable)context.Pipe).Dispose();
            return SmtpResponse.Ok;
        }
    }

    private sealed class Filter(
        string? refuses, int refusal, bool holds, TaskCompletionSource greeted, int mailsASession,
        ConcurrentQueue<string> recipients) : MailboxFilter
    {
        private readonly ConcurrentDictionary<Guid, int> _mails = new();

        public override async Task<bool> CanAcceptFromAsync(
            ISessionContext context, IMailbox from, int size, CancellationToken cancellationToken)
        {
            greeted.TrySetResult();
            if (holds)
                await new TaskCompletionSource().Task.WaitAsync(cancellationToken);
            if (_mails.AddOrUpdate(context.SessionId, 1, (_, mails) => mails + 1) > mailsASession)
                throw new SmtpResponseException(new(SmtpReplyCode.ServiceUnavailable, "enough of this"), quit: true);
            return true;
        }

        public override Task<bool> CanDeliverToAsync(
            ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken)
        {
            recipients.Enqueue(to.AsAddress());
            return to.AsAddress() == refuses
                ? throw new SmtpResponseException(new((SmtpReplyCode)refusal, "not this one"))
                : Task.FromResult(true);
        }
    }
}
