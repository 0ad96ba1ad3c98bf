using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Acis;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using WorkWindows.Feeds.Manners;
using WorkWindows.Feeds.Ncei;
using WorkWindows.Feeds.OpenMeteo;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Service.Weather;

/// <summary>The services that weather may come from.</summary>
internal static class WeatherFeeds
{
    public static void AddFeeds(this IServiceCollection services)
    {
        services.AddOptions<FeedOptions>().BindConfiguration(FeedOptions.Section)
            .ValidateDataAnnotations().ValidateOnStart();
        services.TryAddSingleton(TimeProvider.System);
        services.AddFeedHttp();
        services.AddTransient<NwsPoints>();
        services.AddTransient<AlertFeed>();
        services.AddFeed<NwsGridpointFeed>();
        services.AddFeed<NwsHourlyFeed>();
        services.AddFeed<OpenMeteoForecastFeed>();
        services.AddFeed<OpenMeteoArchiveFeed>();
        services.AddFeed<NceiFeed>();
        services.AddFeed<AcisFeed>();
        services.AddFiles(StationFileFeed.Ghcn, options => options.GhcnFiles);
        services.AddFiles(StationFileFeed.Plain, options => options.PlainCsvFiles);
    }

    private static void AddFeed<T>(this IServiceCollection services) where T : class, IDailyFeed
    {
        services.AddTransient<T>();
        services.AddTransient<IDailyFeed>(scope => scope.GetRequiredService<T>());
    }

    private static void AddFiles(this IServiceCollection services, string key, Func<FeedOptions, string> template) =>
        services.AddTransient<IDailyFeed>(scope => new StationFileFeed(
            key, template(scope.GetRequiredService<IOptions<FeedOptions>>().Value),
            scope.GetRequiredService<FeedHttp>()));
}
