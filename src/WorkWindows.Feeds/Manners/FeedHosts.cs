using System.Collections.Concurrent;
using Microsoft.Extensions.Options;
using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>What this process owes to each host: one for all feeds.</summary>
internal sealed class FeedHosts(IClock clock, IOptions<FeedOptions> options)
{
    private readonly ConcurrentDictionary<string, FeedHost> _hosts = [];

    public FeedHost Of(Uri address) => _hosts.GetOrAdd(
        address.Authority, host => new FeedHost(host, clock, options.Value.RequestsADay));
}
