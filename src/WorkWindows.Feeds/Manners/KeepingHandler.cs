using System.Net;
using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>
/// Answers from memory what is still fresh, unless the request wants it confirmed (<c>no-cache</c>), and asks for the
/// rest only whether it has changed (RFC 9111).
/// </summary>
internal sealed class KeepingHandler(KeptReplies replies, IClock clock) : DelegatingHandler
{
    protected override async Task<HttpResponseMessage> SendAsync(
        HttpRequestMessage request, CancellationToken cancellationToken)
    {
        if (request.Method != HttpMethod.Get)
            return await base.SendAsync(request, cancellationToken);
        var key = $"{request.Headers.Accept} {request.RequestUri}";
        var kept = replies.Find(key);
        var now = clock.GetCurrentInstant();
        var wantsItConfirmed = request.Headers.CacheControl is { NoCache: true };
        if (kept is not null && kept.FreshUntil > now && !wantsItConfirmed)
        {
            return kept.Answer(
                request, kept.IsKnownTo(request) ? HttpStatusCode.NotModified : HttpStatusCode.OK, now);
        }
        var asksItself = request.Headers.IfNoneMatch.Count > 0 || request.Headers.IfModifiedSince is not null;
        if (!asksItself)
            kept?.AddValidators(request);
        var response = await base.SendAsync(request, cancellationToken);
        now = clock.GetCurrentInstant();
        if (response.StatusCode != HttpStatusCode.NotModified)
        {
            if (await KeptReply.OfAsync(response, now, cancellationToken) is { } reply)
                replies.Keep(key, reply);
            return response;
        }
        if (kept is null || (asksItself && !kept.IsKnownTo(request)))
            return response;
        kept = kept with { FreshUntil = Freshness.Until(response, now) ?? now };
        replies.Keep(key, kept);
        return asksItself ? response : kept.Answer(request, HttpStatusCode.OK, now);
    }
}
