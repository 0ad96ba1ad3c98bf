using System.Net;
using System.Net.Http.Headers;
using NodaTime;
using Polly;
using Polly.CircuitBreaker;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Manners;

/// <summary>The way in which all feeds ask. See docs/operations.md for what it takes care of.</summary>
public sealed class FeedHttp(HttpClient http, IClock clock)
{
    internal static readonly string[] Json = ["application/json"];

    /// <summary>Asks for one page.</summary>
    /// <param name="address">Where.</param>
    /// <param name="types">The media types that the reply may have; the first is asked for.</param>
    /// <param name="before">What is known already.</param>
    /// <param name="cancellationToken">Ends the request.</param>
    /// <param name="isConfirmed">
    /// Whether the server itself must say now that the reply holds, even where it called an earlier one fresh.
    /// </param>
    /// <returns>The reply; without a body when nothing has changed since.</returns>
    /// <exception cref="FeedException">There is none that can be used.</exception>
    internal async Task<FeedBody> GetAsync(
        Uri address, IReadOnlyList<string> types, FeedValidators before, CancellationToken cancellationToken,
        bool isConfirmed = false)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        if (isConfirmed)
            request.Headers.CacheControl = new() { NoCache = true };
        if (before.ETag is not null)
            request.Headers.TryAddWithoutValidation("If-None-Match", before.ETag);
        if (before.LastModified is not null)
            request.Headers.TryAddWithoutValidation("If-Modified-Since", before.LastModified);
        return await SendAsync(request, types, before, cancellationToken);
    }

    /// <exception cref="FeedException">There is no reply that can be used.</exception>
    internal async Task<FeedBody> PostJsonAsync(Uri address, byte[] json, CancellationToken cancellationToken)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address);
        request.Content = new ByteArrayContent(json);
        request.Content.Headers.ContentType = new("application/json");
        return await SendAsync(request, Json, FeedValidators.None, cancellationToken);
    }

    private async Task<FeedBody> SendAsync(
        HttpRequestMessage request, IReadOnlyList<string> types, FeedValidators before,
        CancellationToken cancellationToken)
    {
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(types[0]));
        var host = request.RequestUri!.Authority;
        try
        {
            using var response = await http.SendAsync(request, cancellationToken);
            return await ReadAsync(response, types, before, cancellationToken);
        }
        catch (BrokenCircuitException fault)
        {
            throw new FeedUnreachableException(
                $"{host} failed so often that it is left alone for a while.", null, fault);
        }
        catch (HttpRequestException fault)
        {
            throw new FeedUnreachableException($"{host} gave no whole answer: {fault.HttpRequestError}.", null, fault);
        }
        catch (Exception fault) when (
            fault is ExecutionRejectedException
            || (fault is OperationCanceledException && !cancellationToken.IsCancellationRequested))
        {
            throw new FeedUnreachableException($"{host} gave no whole answer in time.", null, fault);
        }
    }

    private async Task<FeedBody> ReadAsync(
        HttpResponseMessage response, IReadOnlyList<string> types, FeedValidators before,
        CancellationToken cancellationToken)
    {
        var now = clock.GetCurrentInstant();
        // A server whose clock is ahead must not seem to have the newest word for ever.
        var answered = response.Headers.Date is { } date ? Instant.Min(now, Instant.FromDateTimeOffset(date)) : now;
        var wholeSeconds = Instant.FromUnixTimeSeconds(answered.ToUnixTimeSeconds());
        var freshUntil = Freshness.Until(response, now);
        if (response.StatusCode == HttpStatusCode.NotModified)
        {
            return before != FeedValidators.None
                ? new(null, before, wholeSeconds, freshUntil)
                : throw new FeedFormatException("The reply is that nothing changed, but nothing was known before.");
        }
        var body = await response.Content.ReadAsByteArrayAsync(cancellationToken);
        if (!response.IsSuccessStatusCode)
            throw FeedProblem.Read(response.StatusCode, body, RetryAfter.Of(response, clock));
        var type = response.Content.Headers.ContentType?.MediaType;
        return type is not null && types.Contains(type, StringComparer.OrdinalIgnoreCase)
            ? new(body, Validators(response), wholeSeconds, freshUntil)
            : throw new FeedFormatException(
                $"The reply is '{type ?? "of no type"}' and not {string.Join(" or ", types)}.");
    }

    private static FeedValidators Validators(HttpResponseMessage response) => new(
        response.Headers.ETag?.ToString(),
        response.Content.Headers.LastModified is { } modified ? modified.ToString("r") : null);
}
