using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Manners;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Brings the forecasts and alerts of an organization up to date.</summary>
public sealed class ForecastRound(
    CurrentOrganization current, DemoWeather demo, StationFetches fetches, OutageWatch outages, PromptLook look,
    IServiceProvider services, IOptions<FeedOptions> options)
{
    /// <remarks>
    /// A new forecast or alert, or the want of one, may close a day on which a crew is at work: it is looked at at
    /// once, not at night.
    /// </remarks>
    /// <exception cref="AggregateException">Stations failed, after all others were asked for.</exception>
    public async Task RunAsync(Guid organizationId, CancellationToken cancellation)
    {
        current.Set(organizationId);
        if (await demo.TopUpAsync(cancellation) || !options.Value.IsEnabled)
            return;
        // Made only now: without someone who asks there is no client to ask with.
        var forecasts = services.GetRequiredService<ForecastHandler>();
        var alerts = services.GetRequiredService<AlertHandler>();
        try
        {
            try
            {
                await forecasts.FetchAsync(cancellation);
                await alerts.FetchAsync(cancellation);
            }
            finally
            {
                await outages.TellAsync([WeatherFeed.Forecasts, WeatherFeed.Alerts], cancellation);
            }
            fetches.ThrowIfAnyFailed();
        }
        finally
        {
            // What is stored is not found new again by the next round, however this one ends.
            look.Enqueue();
        }
    }
}
