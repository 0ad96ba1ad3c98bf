using Hangfire;
using Hangfire.Common;
using Hangfire.States;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>
/// One worker: the part of the service that plans and sends notices, composed as the service composes it.
/// </summary>
internal sealed class NoticeHost : IDisposable
{
    private readonly IHost _host;

    public NoticeHost(
        TestDatabase database, IClock clock, IMailTransport? transport = null, IInterceptor? interceptor = null,
        bool loseJobs = false, IDailyFeed? feed = null,
        params (string Key, string Value)[] settings)
    {
        Folder = Directory.CreateTempSubdirectory("ww-notices-").FullName;
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection(new Dictionary<string, string?>
        {
            [DatabaseServer.Variable] = database.Address.Owner,
            [DataFolder.Variable] = Folder,
            [ServiceRoles.Variable] = "web",
        });
        builder.Configuration.AddInMemoryCollection(
            settings.Select(one => KeyValuePair.Create(one.Key, (string?)one.Value)));
        builder.Services.AddLogging(logging => logging.AddProvider(Logs));
        builder.Services.AddSingleton(clock);
        if (feed is not null)
            builder.Services.AddSingleton(feed);
        builder.AddStorage();
        builder.AddWeather();
        builder.AddWindows();
        builder.AddJobs();
        builder.AddNotices();
        builder.AddSafety();
        builder.AddCrews();
        builder.AddDemo();
        builder.Services.AddSingleton<IBackgroundJobClient>(new Queue(this, loseJobs));
        if (transport is not null)
            builder.Services.AddSingleton(transport);
        if (interceptor is not null)
            builder.Services.ConfigureDbContext<WorkWindowsDb>(options => options.AddInterceptors(interceptor));
        _host = builder.Build();
    }

    public string Folder { get; }

    public LogRecorder Logs { get; } = new();

    /// <summary>The jobs that were put into the queue.</summary>
    public List<Job> Queued { get; } = [];

    public Task RunNightAsync(Guid organization) =>
        InScopeAsync<NightlyRun>(run => run.RunAsync(organization, default));

    public Task SendAsync(Guid organization) =>
        InScopeAsync<Outbox>(outbox => outbox.SendDueAsync(organization, default));

    /// <summary>Looks at what is due, as a worker would.</summary>
    public Task LookAsync(Guid organization) =>
        InScopeAsync<NightlyRun>(run => run.LookAsync(organization, default));

    /// <summary>Has tasks looked at, as something that changes does.</summary>
    public Task NoteAsync(Guid organization, WeatherChange change) =>
        InOrganizationAsync<IServiceProvider>(organization, scope =>
        {
            scope.GetRequiredService<PromptLook>().Note(change);
            return scope.GetRequiredService<WorkWindowsDb>().SaveChangesAsync();
        });

    /// <summary>What is due to be looked at, all of it together; takes it away.</summary>
    public async Task<WeatherChange> TakeDueAsync(Guid organization)
    {
        var taken = new WeatherChange([], [], []);
        await InOrganizationAsync<WorkWindowsDb>(organization, async db =>
        {
            var due = await db.DueLooks.ToListAsync();
            taken = DueLook.Together(due) ?? taken;
            db.RemoveRange(due);
            await db.SaveChangesAsync();
        });
        return taken;
    }

    public Task SendAllAsync() => InScopeAsync<OutboxRound>(round => round.RunAsync(default));

    public async Task InScopeAsync<T>(Func<T, Task> use) where T : notnull
    {
        await using var scope = _host.Services.CreateAsyncScope();
        await use(scope.ServiceProvider.GetRequiredService<T>());
    }

    public Task InOrganizationAsync<T>(Guid organization, Func<T, Task> use) where T : notnull =>
        InScopeAsync<IServiceProvider>(scope =>
        {
            scope.GetRequiredService<CurrentOrganization>().Set(organization);
            return use(scope.GetRequiredService<T>());
        });

    public T Get<T>() where T : notnull => _host.Services.GetRequiredService<T>();

    public void Dispose()
    {
        _host.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    private sealed class Queue(NoticeHost host, bool losesJobs) : IBackgroundJobClient
    {
        public string Create(Job job, IState state)
        {
            if (losesJobs)
                throw new BackgroundJobClientException("The worker was killed.", new IOException());
            host.Queued.Add(job);
            return $"{host.Queued.Count}";
        }

        public bool ChangeState(string jobId, IState state, string expectedState) => true;
    }
}
