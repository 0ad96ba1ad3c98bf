using Hangfire;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Weather;

public static class WeatherServices
{
    /// <summary>The weather service makes a new forecast about every hour; twenty past it has been published.</summary>
    private const string AtTwentyPast = "20 * * * *";

    /// <summary>
    /// Records of days are published once or twice a day, at hours that differ from source to source.
    /// </summary>
    private const string EverySixHours = "40 */6 * * *";

    public static void AddWeather(this IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddScoped<ParcelWeather>();
        services.AddScoped<StationHandler>();
        services.AddScoped<StationReadings>();
        services.AddScoped<StationImportHandler>();
        services.AddScoped<StationAssignment>();
        services.AddScoped<ParcelSources>();
        services.AddScoped<ParcelRecords>();
        services.AddScoped<StationFindings>();
        services.AddFeeds();
        services.AddScoped<ForecastHandler>();
        services.AddScoped<AlertHandler>();
        services.AddScoped<ForecastRound>();
        services.AddSingleton<IValidateOptions<ForecastOptions>, ForecastFeed.Validation>();
        services.AddOptions<ForecastOptions>().BindConfiguration(ForecastOptions.Section).ValidateOnStart();
        services.AddScoped<ForecastFeed>();
        services.AddScoped<StationFetches>();
        services.AddSingleton<IValidateOptions<ObservationOptions>, ObservationFeed.Validation>();
        services.AddOptions<ObservationOptions>().BindConfiguration(ObservationOptions.Section).ValidateOnStart();
        services.AddSingleton<ObservationFeed>();
        services.AddScoped<ObservationHandler>();
        services.AddScoped<ObservationRound>();
        services.AddScoped<FeedStates>();
        services.AddScoped<WeatherRounds>();
        if (ServiceRoles.Of(builder.Configuration) != ServiceRole.Web)
            services.AddHostedService<WeatherSchedule>();
    }

    public static void MapWeather(this IEndpointRouteBuilder app)
    {
        app.MapStations();
        app.MapParcelStations();
        app.MapRecords();
    }

    /// <summary>Puts the jobs on the schedule once the database is there to keep it.</summary>
    private sealed class WeatherSchedule(IRecurringJobManager jobs, ObservationFeed observations) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            jobs.AddOrUpdate<ForecastJob>(
                ForecastJob.Id, job => job.RunAsync(CancellationToken.None), AtTwentyPast);
            if (observations.Configured is null)
                jobs.RemoveIfExists(ObservationJob.Id);
            else
                jobs.AddOrUpdate<ObservationJob>(
                    ObservationJob.Id, job => job.RunAsync(CancellationToken.None), EverySixHours);
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
