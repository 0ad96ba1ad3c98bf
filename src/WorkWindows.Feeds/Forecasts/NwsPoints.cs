using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Finds what the US National Weather Service has for a position, rounded to four decimals.</summary>
public sealed class NwsPoints(FeedHttp http, IOptions<FeedOptions> options)
{
    internal static readonly string[] Types = ["application/geo+json", "application/ld+json", "application/json"];

    private readonly Uri _base = options.Value.NationalWeatherService;

    /// <exception cref="FeedException">The service has no forecast there, or no reply that can be used.</exception>
    internal async Task<Gridpoint> FindAsync(FeedPlace place, CancellationToken cancellationToken)
    {
        var body = await http.GetAsync(
            new Uri(_base, $"points/{Text(place)}"), Types, FeedValidators.None, cancellationToken);
        using var document = FeedJson.Parse(body.Bytes ?? default);
        return new(Address(document, "forecastGridData"), Address(document, "forecastHourly"));
    }

    internal static string Text(FeedPlace place) => string.Create(
        CultureInfo.InvariantCulture, $"{place.LatitudeDeg:0.####},{place.LongitudeDeg:0.####}");

    /// <summary>A reply may not send requests to another host.</summary>
    private Uri Address(JsonDocument document, string name)
    {
        var text = document.RootElement.Member("properties")?.Member(name)?.Text();
        if (!Uri.TryCreate(text, UriKind.Absolute, out var address)
            || (address.Scheme != Uri.UriSchemeHttps && address.Scheme != Uri.UriSchemeHttp))
        {
            throw new FeedFormatException($"The reply for the point lacks {name}.");
        }
        // Set as a path: read as a reference, one such as /http://elsewhere/ would name another host.
        var folder = new Uri(_base, ".").AbsolutePath;
        var target = new UriBuilder(_base) { Path = folder + address.AbsolutePath.TrimStart('/'), Query = "" }.Uri;
        return target.Scheme == _base.Scheme && target.Authority == _base.Authority
            ? target
            : throw new FeedFormatException($"The reply for the point sends {name} to {target.Authority}.");
    }
}
