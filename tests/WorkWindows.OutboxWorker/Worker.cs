using System.Globalization;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using NodaTime;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.OutboxWorker;

/// <summary>
/// The service's own outbox in a process that tests may kill: rounds without end, as the schedule of a worker starts
/// them each minute, on a clock that runs fast.
/// </summary>
public static class Worker
{
    public const string Origin = "OUTBOX_WORKER_ORIGIN_MS";
    public const string Speed = "OUTBOX_WORKER_SPEED";

    private static readonly TimeSpan BetweenRounds = TimeSpan.FromMilliseconds(50);

    private static async Task Main()
    {
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddEnvironmentVariables();
        // What it could not know, or not mark, is what its tests hold it to.
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddSimpleConsole(format => format.SingleLine = true);
        builder.Services.Configure<ConsoleLoggerOptions>(
            options => options.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddSingleton<IClock>(new FastClock(
            Instant.FromUnixTimeMilliseconds(long.Parse(builder.Configuration[Origin]!, CultureInfo.InvariantCulture)),
            int.Parse(builder.Configuration[Speed]!, CultureInfo.InvariantCulture)));
        builder.AddStorage();
        builder.AddNotices();
        using var host = builder.Build();
        while (true)
        {
            await RoundAsync(host.Services);
            await Task.Delay(BetweenRounds);
        }
    }

    /// <summary>A round that fails, because the database is away, is what the next one is for.</summary>
    private static async Task RoundAsync(IServiceProvider services)
    {
        try
        {
            await using var scope = services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<OutboxRound>().RunAsync(CancellationToken.None);
        }
        catch (Exception fault)
        {
            await Console.Error.WriteLineAsync($"Round failed: {fault.GetType().Name}: {fault.Message}");
        }
    }
}
