using System.Diagnostics;
using System.Globalization;
using Hangfire;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Benchmarks;

/// <summary>
/// One night in which everybody is told something, written and delivered by the service's own code, beside empty
/// jobs on the same database: <c>notices LANDOWNERS WORKERS JOBS</c>.
/// </summary>
internal sealed class NoticesMeasure(
    ReadingsServer server, CountingMailServer mail, int landowners, int workers, int jobs)
{
    private const double BytesPerMegabyte = 1024 * 1024;

    private static readonly SemaphoreSlim JobsDone = new(0);

    public static async Task<int> RunAsync(string[] arguments)
    {
        if (arguments is not [var landowners, var workers, var jobs])
        {
            await Console.Error.WriteLineAsync("notices LANDOWNERS WORKERS JOBS");
            return 2;
        }
        await using var server = await ReadingsServer.StartAsync();
        await using var mail = new CountingMailServer();
        await new NoticesMeasure(
            server, mail, int.Parse(landowners, CultureInfo.InvariantCulture),
            int.Parse(workers, CultureInfo.InvariantCulture), int.Parse(jobs, CultureInfo.InvariantCulture)).RunAsync();
        return 0;
    }

    /// <summary>What a job that does nothing does.</summary>
    public static void Nothing() => JobsDone.Release();

    private async Task RunAsync()
    {
        await new LoadedLandowners(server, landowners).LoadAsync();
        SayMemory("before");
        using var host = NewHost();
        var organization = server.Current.Id!.Value;
        await TimeAsync("messages written by the night", async () =>
        {
            await InScopeAsync<NightlyRun>(host, run => run.RunAsync(organization, CancellationToken.None));
            return (int)await server.CountAsync("messages");
        });
        await TimeAsync($"messages delivered by {workers} workers", async () =>
        {
            await Task.WhenAll(Enumerable.Range(0, workers).Select(_ => Task.Run(() => InScopeAsync<Outbox>(
                host, outbox => outbox.SendDueAsync(organization, CancellationToken.None)))));
            return mail.Received;
        });
        Say("messages that wait or were given up", await server.CountAsync("messages where sent_at is null"));
        await EmptyJobsAsync(host);
    }

    private async Task EmptyJobsAsync(IHost host)
    {
        var storage = host.Services.GetRequiredService<JobStorage>();
        var queue = new BackgroundJobClient(storage);
        await TimeAsync("empty jobs put into the queue", () =>
        {
            for (var number = 0; number < jobs; number++)
                queue.Enqueue(() => Nothing());
            return Task.FromResult(jobs);
        });
        await TimeAsync("empty jobs done", async () =>
        {
            using var worker = new BackgroundJobServer(storage);
            for (var done = 0; done < jobs; done++)
                await JobsDone.WaitAsync();
            return jobs;
        });
    }

    private IHost NewHost()
    {
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection(new Dictionary<string, string?>
        {
            [DatabaseServer.Variable] = server.Address.Owner,
            [DataFolder.Variable] = Directory.CreateTempSubdirectory("wb-").FullName,
            [ServiceRoles.Variable] = "web",
            ["Mail:Host"] = "127.0.0.1",
            ["Mail:Port"] = $"{mail.Port}",
            ["Mail:UseTls"] = "false",
            ["Mail:From"] = "notices@example.org",
        });
        builder.Services.AddLogging();
        builder.Services.AddSingleton<IClock>(new NightClock());
        builder.AddStorage();
        builder.AddWeather();
        builder.AddWindows();
        builder.AddJobs();
        builder.AddNotices();
        builder.AddSafety();
        return builder.Build();
    }

    private static async Task InScopeAsync<T>(IHost host, Func<T, Task> use) where T : notnull
    {
        await using var scope = host.Services.CreateAsyncScope();
        await use(scope.ServiceProvider.GetRequiredService<T>());
    }

    private static async Task TimeAsync(string what, Func<Task<int>> run)
    {
        var watch = Stopwatch.StartNew();
        var count = await run();
        Say(what, count);
        Say("  seconds", watch.Elapsed.TotalSeconds);
        Say("  a second", count / watch.Elapsed.TotalSeconds);
        SayMemory("  so far");
    }

    /// <summary>Of this process, in which the mail server runs too.</summary>
    private static void SayMemory(string when)
    {
        using var process = Process.GetCurrentProcess();
        Say($"{when}: largest working set, MB", process.PeakWorkingSet64 / BytesPerMegabyte);
    }

    private static void Say(string what, double figure) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-48}{figure,14:#,0.#}"));

    private sealed class NightClock : IClock
    {
        public Instant GetCurrentInstant() => LoadedLandowners.Night;
    }
}
