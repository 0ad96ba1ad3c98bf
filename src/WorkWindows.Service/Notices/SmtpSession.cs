using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace WorkWindows.Service.Notices;

/// <summary>
/// One connection for many mails. What the server says of one mail leaves it open; any other fault closes it, and the
/// next mail connects anew.
/// </summary>
internal sealed class SmtpSession(MailOptions options) : IMailSession
{
    /// <summary>All mails are with the server by then: a goodbye that is not answered is not waited for.</summary>
    private static readonly TimeSpan GoodbyePatience = TimeSpan.FromSeconds(5);

    private SmtpClient? _client;

    /// <remarks>
    /// A stop of the service does not interrupt it: half a conversation is what nobody can judge later.
    /// </remarks>
    public async Task SendAsync(MimeMessage mail)
    {
        using var timeout = new CancellationTokenSource(TimeSpan.FromSeconds(options.TimeoutSeconds));
        var handover = new Handover();
        try
        {
            await SendAsync(mail, handover, timeout.Token);
        }
        catch (Exception fault) when (ReasonOf(fault) is { } reason)
        {
            // What a server says once the mail is offered is of this mail, but for 421, which ends the conversation.
            var isServerFault = !(handover.IsOffered
                && fault is SmtpCommandException { StatusCode: not SmtpStatusCode.ServiceNotAvailable });
            if (isServerFault)
                Drop();
            throw new MailNotSentException(reason, isServerFault, fault)
            {
                MayHaveArrived = isServerFault && handover.HasBegun,
                MailboxGone = fault is SmtpCommandException { ErrorCode: SmtpErrorCode.RecipientNotAccepted } refusal
                    ? MailboxStatus.OfRefusal((int)refusal.StatusCode, refusal.Message)
                    : null,
            };
        }
    }

    public async ValueTask DisposeAsync()
    {
        using var timeout = new CancellationTokenSource(GoodbyePatience);
        try
        {
            if (_client is not null)
                await _client.DisconnectAsync(quit: true, timeout.Token);
        }
        catch (Exception fault) when (ReasonOf(fault) is not null)
        {
            // Disposing closes the connection.
        }
        Drop();
    }

    private async Task SendAsync(MimeMessage mail, Handover handover, CancellationToken cancellation)
    {
        var isKept = await IsAliveAsync(cancellation);
        if (!isKept)
            await ConnectAsync(cancellation);
        handover.IsOffered = true;
        try
        {
            await _client!.SendAsync(mail, cancellation, handover);
        }
        catch (SmtpCommandException fault) when (isKept && fault.StatusCode == SmtpStatusCode.ServiceNotAvailable)
        {
            // The server has had enough of this connection, not of mail: it has not taken this one.
            handover.IsOffered = false;
            await ConnectAsync(cancellation);
            handover.IsOffered = true;
            await _client!.SendAsync(mail, cancellation, handover);
        }
    }

    /// <summary>
    /// Servers close connections that they find idle or used often enough: better known before a mail is begun.
    /// </summary>
    private async Task<bool> IsAliveAsync(CancellationToken cancellation)
    {
        if (_client is not { IsConnected: true })
            return false;
        try
        {
            await _client.NoOpAsync(cancellation);
            return true;
        }
        catch (Exception fault) when (fault is not OperationCanceledException && ReasonOf(fault) is not null)
        {
            return false;
        }
    }

    private async Task ConnectAsync(CancellationToken cancellation)
    {
        Drop();
        _client = new Client();
        await _client.ConnectAsync(
            await DialAsync(options.Host!, options.Port, cancellation), options.Host!, options.Port, Security,
            cancellation);
        if (!string.IsNullOrEmpty(options.User))
            await _client.AuthenticateAsync(options.User, options.Password!, cancellation);
    }

    /// <summary>
    /// Without a wait for company (RFC 896): a mail goes out in several small pieces, each of which would wait up to 40
    /// ms for the receipt of the one before.
    /// </summary>
    private static async Task<Socket> DialAsync(string host, int port, CancellationToken cancellation)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(host, port, cancellation);
            return socket;
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    private void Drop()
    {
        _client?.Dispose();
        _client = null;
    }

    private SecureSocketOptions Security => (options.UseTls, options.Port) switch
    {
        (false, _) => SecureSocketOptions.None,
        (true, MailOptions.ImplicitTlsPort) => SecureSocketOptions.SslOnConnect,
        (true, _) => SecureSocketOptions.StartTls,
    };

    /// <summary>
    /// Has a report of failed delivery name the mail (RFC 3461, 4.4), where the server writes such reports.
    /// </summary>
    private sealed class Client : SmtpClient
    {
        protected override string GetEnvelopeId(MimeMessage message) => message.MessageId!;
    }

    /// <summary>Whether the server has asked for the mail itself and was given some of it.</summary>
    private sealed class Handover : ITransferProgress
    {
        public bool HasBegun { get; private set; }

        /// <summary>The conversation is about the mail, and no longer about the connection.</summary>
        public bool IsOffered { get; set; }

        public void Report(long bytesTransferred, long totalSize) => HasBegun = true;

        public void Report(long bytesTransferred) => HasBegun = true;
    }

    /// <summary>Kinds and codes only: what a server says may repeat an address.</summary>
    private static string? ReasonOf(Exception fault) => fault switch
    {
        SmtpCommandException refusal => $"{refusal.ErrorCode}, SMTP status {(int)refusal.StatusCode}",
        SocketException socket => $"SMTP server not reached: {socket.SocketErrorCode}",
        OperationCanceledException => "SMTP server too slow",
        ProtocolException or ServiceNotConnectedException or ServiceNotAuthenticatedException
            or AuthenticationException or SslHandshakeException or IOException or NotSupportedException
            => fault.GetType().Name,
        _ => null,
    };
}
