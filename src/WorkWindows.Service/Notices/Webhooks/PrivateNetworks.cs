using System.Net;

namespace WorkWindows.Service.Notices.Webhooks;

/// <summary>
/// Networks that a request of a stranger's choice must not reach. Source: the IANA special-purpose address registries
/// of IPv4 and IPv6 (RFC 6890), and for embedded addresses RFC 6052 (64:ff9b::/96) and RFC 3056 (2002::/16).
/// </summary>
internal static class PrivateNetworks
{
    private static readonly IPNetwork[] All =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12",
            "192.0.0.0/24", "192.0.2.0/24", "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24",
            "224.0.0.0/4", "240.0.0.0/4", "::/96", "64:ff9b::/96", "64:ff9b:1::/48", "100::/64", "2001::/23",
            "2001:db8::/32", "2002::/16", "fc00::/7", "fe80::/10", "fec0::/10", "ff00::/8",
        }.Select(network => IPNetwork.Parse(network)),
    ];

    public static bool Contain(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return All.Any(network => network.Contains(plain));
    }
}
