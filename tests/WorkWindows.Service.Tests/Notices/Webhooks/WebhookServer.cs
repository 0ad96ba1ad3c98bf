using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace WorkWindows.Service.Tests.Notices.Webhooks;

/// <summary>A request as a receiver sees it.</summary>
internal sealed record ReceivedHook(string Id, string Timestamp, string Signature, string Body);

/// <summary>A receiver on loopback that keeps what it gets and answers as it is told.</summary>
internal sealed class WebhookServer : IAsyncDisposable
{
    private readonly WebApplication _app;

    private WebhookServer()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _app = builder.Build();
        _app.MapPost("/in", async (HttpContext context) =>
        {
            using var reader = new StreamReader(context.Request.Body);
            Received.Enqueue(new(
                $"{context.Request.Headers["webhook-id"]}", $"{context.Request.Headers["webhook-timestamp"]}",
                $"{context.Request.Headers["webhook-signature"]}", await reader.ReadToEndAsync()));
            context.Response.Headers.Location = "/in";
            context.Response.StatusCode = Status;
        });
    }

    public ConcurrentQueue<ReceivedHook> Received { get; } = new();

    public int Status { get; set; } = StatusCodes.Status204NoContent;

    public string Address => $"{_app.Urls.Single()}/in";

    public static async Task<WebhookServer> StartAsync()
    {
        var server = new WebhookServer();
        await server._app.StartAsync();
        return server;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
