using System.Net;
using System.Net.Http.Headers;
using NodaTime;

namespace WorkWindows.Feeds.Manners;

/// <summary>A reply in memory, and until when it is fresh.</summary>
internal sealed record KeptReply(
    byte[] Body, MediaTypeHeaderValue? Type, EntityTagHeaderValue? ETag, DateTimeOffset? LastModified,
    DateTimeOffset? Date, Instant FreshUntil)
{
    public bool HasValidator => ETag is not null || LastModified is not null;

    /// <returns>Null where the reply may not be kept, or could never be used again.</returns>
    public static async Task<KeptReply?> OfAsync(
        HttpResponseMessage response, Instant now, CancellationToken cancellationToken)
    {
        if (response.StatusCode != HttpStatusCode.OK || response.Headers.CacheControl is { NoStore: true })
            return null;
        var kept = new KeptReply(
            await response.Content.ReadAsByteArrayAsync(cancellationToken), response.Content.Headers.ContentType,
            response.Headers.ETag, response.Content.Headers.LastModified, response.Headers.Date,
            Freshness.Until(response, now) ?? now);
        return kept.FreshUntil > now || kept.HasValidator ? kept : null;
    }

    /// <summary>Whether this is the reply that the request knows already.</summary>
    public bool IsKnownTo(HttpRequestMessage request) =>
        request.Headers.IfNoneMatch.Count > 0
            ? ETag is not null && request.Headers.IfNoneMatch.Contains(ETag)
            : LastModified is not null && request.Headers.IfModifiedSince == LastModified;

    public void AddValidators(HttpRequestMessage request)
    {
        if (ETag is not null)
            request.Headers.IfNoneMatch.Add(ETag);
        request.Headers.IfModifiedSince = LastModified;
    }

    public HttpResponseMessage Answer(HttpRequestMessage request, HttpStatusCode status, Instant now)
    {
        var response = new HttpResponseMessage(status)
        {
            RequestMessage = request,
            Content = new ByteArrayContent(status == HttpStatusCode.OK ? Body : []),
        };
        response.Content.Headers.ContentType = Type;
        response.Content.Headers.LastModified = LastModified;
        response.Headers.ETag = ETag;
        response.Headers.Date = Date;
        if (FreshUntil > now)
            response.Headers.CacheControl = new() { MaxAge = (FreshUntil - now).ToTimeSpan() };
        return response;
    }
}
