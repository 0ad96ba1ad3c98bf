using Microsoft.Extensions.Options;
using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>Sends a host one request at a time, and none while it wants to be left alone.</summary>
internal sealed class TurnHandler(FeedHosts hosts, IClock clock, IOptions<FeedOptions> options) : DelegatingHandler
{
    protected override async Task<HttpResponseMessage> SendAsync(
        HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var host = hosts.Of(request.RequestUri!);
        await host.Turn.WaitAsync(cancellationToken);
        try
        {
            host.ThrowIfLeftAlone();
            var response = await base.SendAsync(request, cancellationToken);
            if (RetryAfter.Of(response, clock) is { } wait && wait > options.Value.LongestPause())
                host.LeaveAlone(wait);
            return response;
        }
        finally
        {
            host.Turn.Release();
        }
    }
}
