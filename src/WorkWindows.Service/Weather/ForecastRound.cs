using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Brings the weather of every organization up to date.</summary>
public sealed class ForecastRound(WorkWindowsDb db, IServiceScopeFactory scopes, IOptions<ForecastOptions> options)
{
    public Task RunAsync(CancellationToken cancellation) => ForEachAsync(
        async scope =>
        {
            if (!await scope.GetRequiredService<DemoWeather>().TopUpAsync(cancellation) && options.Value.IsEnabled)
                await scope.GetRequiredService<ForecastHandler>().FetchAsync(cancellation);
        },
        cancellation);

    /// <summary>Brings invented weather up to date, and asks no service.</summary>
    public Task TopUpDemosAsync(CancellationToken cancellation) => ForEachAsync(
        scope => scope.GetRequiredService<DemoWeather>().TopUpAsync(cancellation), cancellation);

    private async Task ForEachAsync(Func<IServiceProvider, Task> bring, CancellationToken cancellation)
    {
        var organizations = await db.Database
            .SqlQuery<Guid>($"""select id as "Value" from organizations_on_schedule()""").ToListAsync(cancellation);
        foreach (var organization in organizations)
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
            await bring(scope.ServiceProvider);
        }
    }
}

/// <summary>The round as Hangfire runs it.</summary>
public sealed class ForecastJob(ForecastRound round)
{
    public const string Id = "forecasts";

    public Task RunAsync(CancellationToken cancellation) => round.RunAsync(cancellation);
}
