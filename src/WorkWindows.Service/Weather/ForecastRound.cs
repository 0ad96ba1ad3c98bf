using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Feeds.Manners;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Brings the weather of every organization up to date.</summary>
public sealed class ForecastRound(
    WorkWindowsDb db, IServiceScopeFactory scopes, IOptions<FeedOptions> options, IBackgroundJobClient jobs)
{
    /// <remarks>
    /// A new forecast or alert may close a day on which a crew is at work: it is looked at at once, not at night.
    /// </remarks>
    public Task RunAsync(CancellationToken cancellation) => ForEachAsync(
        async (scope, organization) =>
        {
            if (await scope.GetRequiredService<DemoWeather>().TopUpAsync(cancellation) || !options.Value.IsEnabled)
                return;
            var forecasts = await scope.GetRequiredService<ForecastHandler>().FetchAsync(cancellation);
            var alerts = await scope.GetRequiredService<AlertHandler>().FetchAsync(cancellation);
            if (forecasts + alerts > 0)
                jobs.Enqueue<NightlyJob>(job => job.RunAsync(organization, CancellationToken.None));
        },
        cancellation);

    /// <summary>Brings invented weather up to date, and asks no service.</summary>
    public Task TopUpDemosAsync(CancellationToken cancellation) => ForEachAsync(
        (scope, _) => scope.GetRequiredService<DemoWeather>().TopUpAsync(cancellation), cancellation);

    private async Task ForEachAsync(Func<IServiceProvider, Guid, Task> bring, CancellationToken cancellation)
    {
        var organizations = await db.Database
            .SqlQuery<Guid>($"""select id as "Value" from organizations_on_schedule()""").ToListAsync(cancellation);
        foreach (var organization in organizations)
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
            await bring(scope.ServiceProvider, organization);
        }
    }
}

/// <summary>The round as Hangfire runs it.</summary>
public sealed class ForecastJob(ForecastRound round)
{
    public const string Id = "forecasts";

    public Task RunAsync(CancellationToken cancellation) => round.RunAsync(cancellation);
}
