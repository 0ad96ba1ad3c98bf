using System.Net;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Manners;

/// <summary>
/// One attempt: counts each request against the day's, follows redirects on the same host, and reads the whole reply up
/// to the largest size, so that time limits hold for the body too.
/// </summary>
internal sealed class SendingHandler(FeedHosts hosts, IOptions<FeedOptions> options) : DelegatingHandler
{
    private const int MostRedirects = 3;

    private readonly long _largestBytes = options.Value.LargestReplyMb * 1024L * 1024;

    protected override async Task<HttpResponseMessage> SendAsync(
        HttpRequestMessage request, CancellationToken cancellationToken)
    {
        // A retry begins at the address that was asked for.
        var asked = request.RequestUri!;
        try
        {
            for (var redirects = 0; ; redirects++)
            {
                hosts.Of(asked).Spend();
                var response = await base.SendAsync(request, cancellationToken);
                if (Target(request, response) is not { } target)
                    return await WholeAsync(response, cancellationToken);
                response.Dispose();
                if (redirects == MostRedirects)
                    throw Refusal(response.StatusCode, $"redirects more than {MostRedirects} times");
                request.RequestUri = target;
            }
        }
        finally
        {
            request.RequestUri = asked;
        }
    }

    /// <exception cref="FeedRefusedException">The reply sends the request elsewhere.</exception>
    private static Uri? Target(HttpRequestMessage request, HttpResponseMessage response)
    {
        if (response.StatusCode is not (HttpStatusCode.MovedPermanently or HttpStatusCode.Found
            or HttpStatusCode.SeeOther or HttpStatusCode.TemporaryRedirect or HttpStatusCode.PermanentRedirect))
        {
            return null;
        }
        using (response)
        {
            if (request.Method != HttpMethod.Get)
                throw Refusal(response.StatusCode, $"redirects a {request.Method} request");
            if (response.Headers.Location is not { } location)
                throw Refusal(response.StatusCode, "redirects to nowhere");
            var target = new Uri(request.RequestUri!, location);
            return target.Scheme == request.RequestUri!.Scheme && target.Authority == request.RequestUri.Authority
                ? target
                : throw Refusal(
                    response.StatusCode, $"redirects to another host, {target.Scheme}://{target.Authority}");
        }
    }

    private async Task<HttpResponseMessage> WholeAsync(
        HttpResponseMessage response, CancellationToken cancellationToken)
    {
        try
        {
            await response.Content.LoadIntoBufferAsync(_largestBytes, cancellationToken);
            return response;
        }
        catch (HttpRequestException fault) when (fault.HttpRequestError == HttpRequestError.ConfigurationLimitExceeded)
        {
            response.Dispose();
            throw new FeedFormatException($"The reply is larger than {options.Value.LargestReplyMb} MB.", fault);
        }
        catch
        {
            response.Dispose();
            throw;
        }
    }

    private static FeedRefusedException Refusal(HttpStatusCode status, string detail) =>
        new(status, null, null, detail, null);
}
