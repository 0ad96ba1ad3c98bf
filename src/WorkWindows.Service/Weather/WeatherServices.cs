using Hangfire;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Weather;

public static class WeatherServices
{
    /// <summary>The weather service makes a new forecast about every hour; twenty past it has been published.</summary>
    private const string AtTwentyPast = "20 * * * *";

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
        if (ServiceRoles.Of(builder.Configuration) != ServiceRole.Web)
            services.AddHostedService<ForecastSchedule>();
    }

    public static void MapWeather(this IEndpointRouteBuilder app)
    {
        app.MapStations();
        app.MapParcelStations();
        app.MapRecords();
    }

    /// <summary>Puts the job on the schedule once the database is there to keep it.</summary>
    private sealed class ForecastSchedule(IRecurringJobManager jobs) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            jobs.AddOrUpdate<ForecastJob>(
                ForecastJob.Id, job => job.RunAsync(CancellationToken.None), AtTwentyPast);
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
