using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Brings the weather of every organization up to date.</summary>
public sealed class ForecastRound(WorkWindowsDb db, IServiceScopeFactory scopes, IOptions<ForecastOptions> options)
{
    public async Task RunAsync(CancellationToken cancellation)
    {
        var organizations = await db.Database
            .SqlQuery<Guid>($"""select id as "Value" from organizations_on_schedule()""").ToListAsync(cancellation);
        foreach (var organization in organizations)
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
            if (!await scope.ServiceProvider.GetRequiredService<DemoWeather>().TopUpAsync(cancellation)
                && options.Value.IsEnabled)
            {
                await scope.ServiceProvider.GetRequiredService<ForecastHandler>().FetchAsync(cancellation);
            }
        }
    }
}

/// <summary>The round as Hangfire runs it.</summary>
public sealed class ForecastJob(ForecastRound round)
{
    public const string Id = "forecasts";

    public Task RunAsync(CancellationToken cancellation) => round.RunAsync(cancellation);
}
