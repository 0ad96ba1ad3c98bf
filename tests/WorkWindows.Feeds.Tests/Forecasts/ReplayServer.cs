using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace WorkWindows.Feeds.Tests.Forecasts;

/// <summary>A server on loopback that answers every request as the test says, and remembers the requests.</summary>
internal sealed class ReplayServer : IAsyncDisposable
{
    private readonly WebApplication _application;

    private ReplayServer(WebApplication application) => _application = application;

    public Uri Address => new(_application.Urls.Single());

    public List<(string Path, string UserAgent)> Requests { get; } = [];

    public static async Task<ReplayServer> StartAsync(RequestDelegate answer)
    {
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        var application = builder.Build();
        var server = new ReplayServer(application);
        application.Run(context =>
        {
            server.Requests.Add(($"{context.Request.Path}", $"{context.Request.Headers.UserAgent}"));
            return answer(context);
        });
        await application.StartAsync();
        return server;
    }

    public static async Task SendAsync(HttpContext context, int status, string contentType, ReadOnlyMemory<byte> body)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = contentType;
        await context.Response.Body.WriteAsync(body);
    }

    public ValueTask DisposeAsync() => _application.DisposeAsync();
}
