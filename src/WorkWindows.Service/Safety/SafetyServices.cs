using Hangfire;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Safety.Incidents;

namespace WorkWindows.Service.Safety;

public static class SafetyServices
{
    /// <summary>Watches over crews, checklists, incidents, and on workers the round that looks for crews.</summary>
    public static void AddSafety(this IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddOptions<SiteOptions>().BindConfiguration(SiteOptions.Section)
            .ValidateDataAnnotations().ValidateOnStart();
        services.AddSingleton<AlarmLink>();
        services.AddSingleton<AlarmDesk>();
        services.AddScoped<PlannedCompany>();
        services.AddScoped<WatchStore>();
        services.AddScoped<WatchStart>();
        services.AddScoped<WatchHandler>();
        services.AddScoped<WatchReader>();
        services.AddScoped<WatchRound>();
        services.AddScoped<WatchRounds>();
        services.AddScoped<ChecklistReader>();
        services.AddScoped<SignatureHandler>();
        services.AddScoped<IncidentHandler>();
        services.AddScoped<IncidentReader>();
        if (ServiceRoles.Of(builder.Configuration) != ServiceRole.Web)
            services.AddHostedService<WatchSchedule>();
    }

    public static void MapSafety(this IEndpointRouteBuilder app)
    {
        app.MapWatches();
        app.MapChecklists();
        app.MapIncidents();
    }

    /// <summary>Puts the job on the schedule once the database is there to keep it.</summary>
    private sealed class WatchSchedule(IRecurringJobManager jobs) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            jobs.AddOrUpdate<WatchRoundsJob>(
                WatchRoundsJob.Id, job => job.RunAsync(CancellationToken.None), Cron.Minutely());
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
