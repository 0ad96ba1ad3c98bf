using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Testing;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;

namespace WorkWindows.Feeds.Tests.Manners;

/// <summary>The feeds as the service composes them, asking a server of the test.</summary>
internal sealed class TestFeeds : IDisposable
{
    public const string UserAgent = "(woods.example.org, office@example.org)";

    private readonly ServiceProvider _services;

    public TestFeeds(Uri server, Action<FeedOptions>? change = null, ILoggerProvider? logs = null)
    {
        var options = new FeedOptions
        {
            UserAgent = UserAgent,
            LargestReplyMb = 2,
            NationalWeatherService = server,
            OpenMeteoForecast = server,
            OpenMeteoArchive = server,
            Ncei = server,
            Acis = server,
            GhcnFiles = $"{server}ghcn/{{station}}",
            PlainCsvFiles = $"{server}plain/{{station}}.csv",
        };
        change?.Invoke(options);
        Time = new(TimeSpan.FromSeconds(options.AttemptSeconds));
        var services = new ServiceCollection();
        services.AddLogging(logging =>
        {
            logging.SetMinimumLevel(LogLevel.Trace);
            if (logs is not null)
                logging.AddProvider(logs);
        });
        services.AddSingleton(Microsoft.Extensions.Options.Options.Create(options));
        services.AddSingleton<IClock>(Clock);
        services.AddSingleton<TimeProvider>(Time);
        services.AddFeedHttp();
        _services = services.BuildServiceProvider();
    }

    public FakeClock Clock { get; } = new(Instant.FromUtc(2026, 4, 12, 12, 0));

    public ManualTime Time { get; }

    public IOptions<FeedOptions> Options => _services.GetRequiredService<IOptions<FeedOptions>>();

    /// <summary>A new client, as each round of the service has one.</summary>
    public FeedHttp Http => _services.GetRequiredService<FeedHttp>();

    public static DailyFeedRequest Request(
        LocalDate from, LocalDate to, string zone = "America/New_York", string? station = "USW00014939",
        FeedValidators? before = null) => new(
            new(station, 42.74500004, -73.752, 85), DateTimeZoneProviders.Tzdb[zone], new(from, to),
            before ?? FeedValidators.None);

    public void Dispose() => _services.Dispose();
}
