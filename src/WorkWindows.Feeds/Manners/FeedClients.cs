using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Http.Resilience;
using Microsoft.Extensions.Options;
using NodaTime;
using Polly;

namespace WorkWindows.Feeds.Manners;

/// <summary>Makes the HTTP client of all feeds.</summary>
public static class FeedClients
{
    /// <summary>
    /// Adds <see cref="FeedHttp"/>. Needs <see cref="FeedOptions"/>, an <see cref="IClock"/> and a
    /// <see cref="TimeProvider"/>.
    /// </summary>
    public static void AddFeedHttp(this IServiceCollection services)
    {
        services.AddSingleton<FeedHosts>();
        services.AddSingleton<KeptReplies>();
        services.AddTransient<KeepingHandler>();
        services.AddTransient<TurnHandler>();
        services.AddTransient<SendingHandler>();
        var client = services.AddHttpClient<FeedHttp>((scope, http) =>
        {
            // The pipeline limits the time; a wait for one's turn is no fault of the server.
            http.Timeout = Timeout.InfiniteTimeSpan;
            http.DefaultRequestHeaders.TryAddWithoutValidation(
                "User-Agent", scope.GetRequiredService<IOptions<FeedOptions>>().Value.UserAgent);
        });
        client.ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            AutomaticDecompression = DecompressionMethods.All,
            UseCookies = false,
        });
        // Addresses hold keys and the places of clients.
        client.RemoveAllLoggers();
        client.AddHttpMessageHandler<KeepingHandler>();
        client.AddHttpMessageHandler<TurnHandler>();
        client.AddResilienceHandler("feeds", AddPatience).SelectPipelineByAuthority();
        client.AddHttpMessageHandler<SendingHandler>();
    }

    private static void AddPatience(
        ResiliencePipelineBuilder<HttpResponseMessage> pipeline, ResilienceHandlerContext context)
    {
        var options = context.ServiceProvider.GetRequiredService<IOptions<FeedOptions>>().Value;
        var clock = context.ServiceProvider.GetRequiredService<IClock>();
        pipeline.TimeProvider = context.ServiceProvider.GetRequiredService<TimeProvider>();
        pipeline
            .AddTimeout(TimeSpan.FromSeconds(options.TotalSeconds))
            .AddRetry(new HttpRetryStrategyOptions
            {
                MaxRetryAttempts = options.Retries,
                Delay = TimeSpan.FromSeconds(options.FirstPauseSeconds),
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                ShouldRetryAfterHeader = true,
                ShouldHandle = args => ValueTask.FromResult(
                    HttpClientResiliencePredicates.IsTransient(args.Outcome)
                    && !(args.Outcome.Result is { } response
                        && RetryAfter.Of(response, clock) > options.LongestPause())),
            })
            .AddCircuitBreaker(new HttpCircuitBreakerStrategyOptions
            {
                MinimumThroughput = options.AttemptsBeforeBreak,
                FailureRatio = 0.9,
                SamplingDuration = TimeSpan.FromMinutes(10),
                BreakDuration = TimeSpan.FromSeconds(options.BreakSeconds),
            })
            .AddTimeout(TimeSpan.FromSeconds(options.AttemptSeconds));
    }
}
