using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Demo;

/// <summary>Loads the demo before the service answers, and says how to sign in.</summary>
internal sealed partial class DemoStartup(
    IServiceScopeFactory scopes, IConfiguration configuration, ILogger<DemoStartup> logger) : IHostedLifecycleService
{
    private const string Variable = "WORKWINDOWS_DEMO";

    public async Task StartingAsync(CancellationToken cancellationToken)
    {
        if (configuration[Variable] == "off")
            return;
        await using var scope = scopes.CreateAsyncScope();
        if (await scope.ServiceProvider.GetRequiredService<DemoOrganization>().LoadAsync(cancellationToken))
            LogSignIn(DemoOrganization.ConsultantEmail, DemoOrganization.Password);
        // The demo may have stood still for days.
        await using var others = scopes.CreateAsyncScope();
        var db = others.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellationToken))
            await TopUpAsync(id, cancellationToken);
    }

    private async Task TopUpAsync(Guid organization, CancellationToken cancellation)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        await scope.ServiceProvider.GetRequiredService<DemoWeather>().TopUpAsync(cancellation);
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(LogLevel.Information, "Demo sign-in: {DemoEmail}, password {DemoPassword}")]
    private partial void LogSignIn(string demoEmail, string demoPassword);
}

public static class DemoServices
{
    public static void AddDemo(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<DemoOrganization>();
        builder.Services.AddScoped<DemoCrews>();
        builder.Services.AddScoped<DemoScenario>();
        builder.Services.AddScoped<DemoWeather>();
        builder.Services.AddHostedService<DemoStartup>();
    }
}
