using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using NodaTime;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>Fetches forecasts and alerts of the US National Weather Service.</summary>
public sealed class NationalWeatherServiceClient
{
    private readonly HttpClient _http;
    private readonly NationalWeatherServiceOptions _options;

    public NationalWeatherServiceClient(HttpClient http, NationalWeatherServiceOptions options)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(options);
        if (string.IsNullOrWhiteSpace(options.UserAgent))
            throw new ArgumentException("The weather service needs a user agent that says who asks.", nameof(options));
        (_http, _options) = (http, options);
    }

    /// <summary>Finds the grid cell of a position. It is rounded to the four decimals that are taken.</summary>
    /// <exception cref="FeedRefusedException">The service has no forecast there, or cannot answer.</exception>
    /// <exception cref="FeedFormatException">The reply cannot be used.</exception>
    public async Task<Gridpoint> FindGridpointAsync(
        double latitudeDeg, double longitudeDeg, CancellationToken cancellationToken)
    {
        var address = new Uri(_options.BaseAddress, $"points/{Point(latitudeDeg, longitudeDeg)}");
        using var response = await SendAsync(address, null, cancellationToken);
        var body = await BodyAsync(response, cancellationToken);
        using var document = ServiceJson.Parse(body);
        var properties = document.RootElement.Member("properties");
        var forecast = properties?.Member("forecastGridData")?.Text();
        var timeZone = properties?.Member("timeZone")?.Text();
        return Uri.TryCreate(forecast, UriKind.Absolute, out var grid) && timeZone is not (null or "")
            ? new(OnBaseAddress(grid), timeZone)
            : throw new FeedFormatException("The reply for the point lacks forecastGridData or timeZone.");
    }

    /// <summary>Fetches the forecast of a grid cell.</summary>
    /// <param name="gridpoint">The cell.</param>
    /// <param name="zone">The zone whose days are meant.</param>
    /// <param name="newerThan">The LastModified of the reply before; null to fetch in any case.</param>
    /// <param name="cancellationToken">Ends the request.</param>
    /// <exception cref="FeedRefusedException">The service cannot answer.</exception>
    /// <exception cref="FeedFormatException">The reply cannot be used.</exception>
    public async Task<ForecastReply> GetForecastAsync(
        Gridpoint gridpoint, DateTimeZone zone, Instant? newerThan, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(gridpoint);
        using var response = await SendAsync(OnBaseAddress(gridpoint.Address), newerThan, cancellationToken);
        if (response.StatusCode == HttpStatusCode.NotModified)
            return new(null, newerThan);
        var body = await BodyAsync(response, cancellationToken);
        Instant? lastModified = response.Content.Headers.LastModified is { } modified
            ? Instant.FromDateTimeOffset(modified)
            : null;
        return new(GridpointForecast.Read(body, zone), lastModified);
    }

    /// <summary>Fetches the alerts that are in force or coming at a position, rounded to four decimals.</summary>
    /// <exception cref="FeedRefusedException">The service cannot answer.</exception>
    /// <exception cref="FeedFormatException">The reply, or an alert in it, cannot be read.</exception>
    public async Task<ImmutableArray<ActiveAlert>> GetAlertsAsync(
        double latitudeDeg, double longitudeDeg, CancellationToken cancellationToken)
    {
        var address = new Uri(_options.BaseAddress, $"alerts/active?point={Point(latitudeDeg, longitudeDeg)}");
        using var response = await SendAsync(address, null, cancellationToken);
        return ActiveAlerts.Read(await BodyAsync(response, cancellationToken));
    }

    private static string Point(double latitudeDeg, double longitudeDeg) =>
        string.Create(CultureInfo.InvariantCulture, $"{latitudeDeg:0.####},{longitudeDeg:0.####}");

    private async Task<HttpResponseMessage> SendAsync(
        Uri address, Instant? newerThan, CancellationToken cancellationToken)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.TryAddWithoutValidation("User-Agent", _options.UserAgent);
        request.Headers.Accept.ParseAdd("application/geo+json");
        request.Headers.IfModifiedSince = newerThan?.ToDateTimeOffset();
        return await _http.SendAsync(request, cancellationToken);
    }

    private static async Task<byte[]> BodyAsync(HttpResponseMessage response, CancellationToken cancellationToken)
    {
        var body = await response.Content.ReadAsByteArrayAsync(cancellationToken);
        if (!response.IsSuccessStatusCode)
            throw ServiceProblem.Read(response.StatusCode, body);
        var type = response.Content.Headers.ContentType?.MediaType;
        return type is "application/geo+json" or "application/ld+json" or "application/json"
            ? body
            : throw new FeedFormatException($"The reply is '{type ?? "of no type"}' and not JSON.");
    }

    /// <summary>A reply may not send requests to another host.</summary>
    private Uri OnBaseAddress(Uri address) =>
        address.Authority == _options.BaseAddress.Authority && address.Scheme == _options.BaseAddress.Scheme
            ? address
            : new(_options.BaseAddress, address.AbsolutePath.TrimStart('/'));
}
