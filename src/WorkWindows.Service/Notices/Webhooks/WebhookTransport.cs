using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Service.Notices.Webhooks;

/// <summary>
/// Hands messages over as signed requests. Whoever chooses the address must not reach with it what only this machine
/// reaches: names are resolved here, and the connection is made to the very address that was found harmless.
/// </summary>
public sealed class WebhookTransport : IDisposable
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly WebhookOptions _options;
    private readonly IClock _clock;
    private readonly HttpClient _client;

    public WebhookTransport(IOptions<WebhookOptions> options, IClock clock)
    {
        (_options, _clock) = (options.Value, clock);
        _client = new(new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseCookies = false,
            UseProxy = false,
            ConnectCallback = ConnectAsync,
        })
        {
            Timeout = TimeSpan.FromSeconds(_options.TimeoutSeconds),
        };
    }

    /// <summary>What a receiver gets.</summary>
    private sealed record Body(
        string Id, string Kind, string Subject, string Text, string? Calendar, string CreatedAt);

    /// <returns>False when the receiver says that it is gone for good.</returns>
    /// <exception cref="MailNotSentException">It was not taken over, or nobody can say whether it was.</exception>
    public async Task<bool> SendAsync(Message message, WebhookTarget target)
    {
        if (!IsAccepted(target.Address, _options.AllowPrivateAddresses))
            throw NotSent("the webhook's address is not accepted");
        if (!WebhookTarget.IsSecret(target.Secret))
            throw NotSent("the webhook's secret cannot be read");
        using var request = Request(message, target);
        try
        {
            using var answer = await _client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
            if (!answer.IsSuccessStatusCode && answer.StatusCode != HttpStatusCode.Gone)
                throw NotSent($"HTTP status {(int)answer.StatusCode}");
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException fault)
        {
            throw NotSent(
                fault.InnerException is PrivateAddressException ? "the webhook's host is on a private network"
                : $"webhook not reached: {fault.HttpRequestError}", fault);
        }
        catch (TaskCanceledException fault)
        {
            throw NotSent("webhook too slow", fault);
        }
    }

    /// <summary>Whether requests may go to an address: https, and no name or password in it.</summary>
    /// <param name="address">What somebody entered.</param>
    /// <param name="allowPrivate">Whether this machine may be named without TLS.</param>
    public static bool IsAccepted(string address, bool allowPrivate) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri is { UserInfo: "", Fragment: "" }
        && (uri.Scheme == Uri.UriSchemeHttps || (uri.Scheme == Uri.UriSchemeHttp && allowPrivate && uri.IsLoopback));

    public void Dispose() => _client.Dispose();

    private HttpRequestMessage Request(Message message, WebhookTarget target)
    {
        var id = $"{message.Id:N}";
        var seconds = _clock.GetCurrentInstant().ToUnixTimeSeconds();
        var body = JsonSerializer.Serialize(
            new Body(
                id, message.Kind, message.Subject, message.TextBody, message.Calendar,
                InstantPattern.ExtendedIso.Format(message.CreatedAt)), Json);
        var request = new HttpRequestMessage(HttpMethod.Post, target.Address)
        {
            Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body))
            {
                Headers = { ContentType = new MediaTypeHeaderValue("application/json", "utf-8") },
            },
        };
        request.Headers.Add("webhook-id", id);
        request.Headers.Add("webhook-timestamp", $"{seconds}");
        request.Headers.Add("webhook-signature", target.Sign(id, seconds, body));
        return request;
    }

    private async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken cancellation)
    {
        var host = context.DnsEndPoint;
        var found = await Dns.GetHostAddressesAsync(host.Host, cancellation);
        if (!_options.AllowPrivateAddresses && found.Any(PrivateNetworks.Contain))
            throw new PrivateAddressException();
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(found, host.Port, cancellation);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    /// <remarks>One receiver that fails says nothing of the others, nor of the mail server.</remarks>
    private static MailNotSentException NotSent(string reason, Exception? inner = null) => new(reason, false, inner);

    private sealed class PrivateAddressException : IOException;
}
