using System.Buffers;
using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using MimeKit;
using SmtpServer;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using ServiceProvider = SmtpServer.ComponentModel.ServiceProvider;

namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>What the server can do to others.</summary>
internal interface IChaos
{
    /// <returns>The process that sends to the port now.</returns>
    int WorkerOf(int port);

    void Kill(int port);

    void KillAnother(int port);

    /// <summary>Returns when the database has stopped; it comes back by itself.</summary>
    Task StopDatabaseAsync();
}

/// <summary>A real SMTP server with a port for each worker, which treats each attempt as its fate says.</summary>
internal sealed class ChaosMailServer : IAsyncDisposable
{
    private const string Sender = "Worker";

    private readonly CancellationTokenSource _stop = new();
    private readonly Task _running;

    /// <param name="ports">One a worker.</param>
    /// <param name="fates">What happens to each attempt.</param>
    /// <param name="patience">How long a sender waits for a reply.</param>
    /// <param name="ledger">Where it is written down.</param>
    /// <param name="chaos">What happens to others.</param>
    public ChaosMailServer(IEnumerable<int> ports, Fates fates, TimeSpan patience, Ledger ledger, IChaos chaos)
    {
        var services = new ServiceProvider();
        var desk = new Desk(fates, patience * 1.5, ledger, chaos);
        services.Add((IMailboxFilter)desk);
        services.Add((IMessageStore)desk);
        var options = new SmtpServerOptionsBuilder().ServerName("localhost");
        foreach (var port in ports)
            options.Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, port)));
        var server = new SmtpServer.SmtpServer(options.Build(), services);
        // Before it is greeted: whoever is started on the port after that has no part in the conversation.
        server.SessionCreated += (_, session) =>
            session.Context.Properties[Sender] = chaos.WorkerOf(session.Context.EndpointDefinition.Endpoint.Port);
        _running = server.StartAsync(_stop.Token);
    }

    public static string Address(int message) => $"m{message}@example.org";

    private static int Number(IMailbox to) => int.Parse(to.User[1..], CultureInfo.InvariantCulture);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private sealed class Desk(Fates fates, TimeSpan tooLong, Ledger ledger, IChaos chaos) : IMailboxFilter, IMessageStore
    {
        private readonly ConcurrentDictionary<int, int> _attempts = new();

        public Task<bool> CanAcceptFromAsync(
            ISessionContext context, IMailbox from, int size, CancellationToken cancellationToken) => Task.FromResult(true);

        public async Task<bool> CanDeliverToAsync(
            ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken)
        {
            var message = Number(to);
            var fate = fates.Draw(message, _attempts.GetValueOrDefault(message) + 1);
            if (fate is Fate.BusyMailbox or Fate.ServiceCloses or Fate.SlowBeforeData)
                CarryOut(message);
            switch (fate)
            {
                case Fate.BusyMailbox:
                    throw new SmtpResponseException(new((SmtpReplyCode)450, "4.2.1 mailbox busy"));
                case Fate.ServiceCloses:
                    throw new SmtpResponseException(new((SmtpReplyCode)421, "4.3.2 closing"), quit: true);
                case Fate.SlowBeforeData:
                    await Task.Delay(tooLong, cancellationToken);
                    break;
            }
            context.Properties[nameof(Fate)] = fate;
            return true;
        }

        public async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer,
            CancellationToken cancellationToken)
        {
            var fate = (Fate)context.Properties[nameof(Fate)];
            var port = context.EndpointDefinition.Endpoint.Port;
            CarryOut(Number(transaction.To.Single()));
            switch (fate)
            {
                case Fate.LocalError:
                    return new((SmtpReplyCode)451, "4.3.0 local error");
                case Fate.TransactionFails:
                    return new(SmtpReplyCode.TransactionFailed, "5.5.0 not now");
                case Fate.DropBeforeAcceptance:
                    return Cut(context);
                case Fate.KillBeforeAcceptance:
                    chaos.Kill(port);
                    return Cut(context);
            }
            using var content = new MemoryStream(buffer.ToArray());
            var mail = await MimeMessage.LoadAsync(content, cancellationToken);
            ledger.Accept(Number(transaction.To.Single()), mail.MessageId!, fate, (int)context.Properties[Sender]);
            return await ReplyAsync(context, fate, port, cancellationToken);
        }

        /// <summary>A worker that is killed, or too slow, before its mail has come leaves the fate to the next.</summary>
        private void CarryOut(int message) => _attempts.AddOrUpdate(message, 1, (_, attempts) => attempts + 1);

        private async Task<SmtpResponse> ReplyAsync(
            ISessionContext context, Fate fate, int port, CancellationToken cancellation)
        {
            switch (fate)
            {
                case Fate.DropAfterAcceptance:
                    return Cut(context);
                case Fate.SlowAfterAcceptance:
                    await Task.Delay(tooLong, cancellation);
                    break;
                case Fate.KillAfterAcceptance:
                    chaos.Kill(port);
                    return Cut(context);
                case Fate.KillAtReply:
                    _ = Task.Run(() => chaos.Kill(port), cancellation);
                    break;
                case Fate.KillAnother:
                    chaos.KillAnother(port);
                    break;
                case Fate.RestartDatabase:
                    await chaos.StopDatabaseAsync();
                    break;
            }
            return SmtpResponse.Ok;
        }

        private static SmtpResponse Cut(ISessionContext context)
        {
            ((IDisposable)context.Pipe).Dispose();
            return SmtpResponse.Ok;
        }
    }
}
