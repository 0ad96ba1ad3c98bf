using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.Options;
using MimeKit;

namespace WorkWindows.Service.Notices;

/// <summary>Hands mails to the SMTP server, one connection a mail.</summary>
public sealed class SmtpTransport(IOptions<MailOptions> options) : IMailTransport
{
    private readonly MailOptions _options = options.Value;

    /// <remarks>A stop of the service does not interrupt it: half a conversation is what nobody can judge later.</remarks>
    public async Task SendAsync(MimeMessage mail)
    {
        using var timeout = new CancellationTokenSource(TimeSpan.FromSeconds(_options.TimeoutSeconds));
        using var client = new SmtpClient();
        try
        {
            await client.ConnectAsync(_options.Host!, _options.Port, Security, timeout.Token);
            if (!string.IsNullOrEmpty(_options.User))
                await client.AuthenticateAsync(_options.User, _options.Password!, timeout.Token);
            await client.SendAsync(mail, timeout.Token);
        }
        catch (Exception fault) when (ReasonOf(fault) is { } reason)
        {
            var isMailFault = fault is SmtpCommandException { ErrorCode: not SmtpErrorCode.UnexpectedStatusCode };
            throw new MailNotSentException(reason, !isMailFault, fault);
        }
        await SayGoodbyeAsync(client, timeout.Token);
    }

    private SecureSocketOptions Security => (_options.UseTls, _options.Port) switch
    {
        (false, _) => SecureSocketOptions.None,
        (true, MailOptions.ImplicitTlsPort) => SecureSocketOptions.SslOnConnect,
        (true, _) => SecureSocketOptions.StartTls,
    };

    /// <summary>The server has the mail: whatever happens now is no failure of sending.</summary>
    private static async Task SayGoodbyeAsync(SmtpClient client, CancellationToken cancellation)
    {
        try
        {
            await client.DisconnectAsync(quit: true, cancellation);
        }
        catch (Exception fault) when (ReasonOf(fault) is not null)
        {
            // Disposing closes the connection.
        }
    }

    /// <summary>Kinds and codes only: what a server says may repeat an address.</summary>
    private static string? ReasonOf(Exception fault) => fault switch
    {
        SmtpCommandException refusal => $"{refusal.ErrorCode}, SMTP status {(int)refusal.StatusCode}",
        SocketException socket => $"SMTP server not reached: {socket.SocketErrorCode}",
        OperationCanceledException => "SMTP server too slow",
        ProtocolException or ServiceNotConnectedException or AuthenticationException or SslHandshakeException
            or IOException or NotSupportedException
            => fault.GetType().Name,
        _ => null,
    };
}
