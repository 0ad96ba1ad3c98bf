using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Tests;
using static WorkWindows.Feeds.Tests.Alerts.AlertJson;

namespace WorkWindows.Service.Tests.Weather;

public sealed class ForecastRoundTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Instant.FromUtc(2026, 4, 12, 12, 0));

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Run_HasTheStationsTasksLookedAt_WhenOnlyTheAlertsChanged()
    {
        var organization = await database.AddOrganizationAsync("Org");
        var station = await GivenStation.StoreAsync(database, organization, "USC00000001", 42.745, -73.752);
        var alerts = Payload();
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 200, "application/geo+json",
            context.Request.Path.StartsWithSegments("/alerts")
                ? alerts
                : File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast{context.Request.Path}.json"))));
        using var host = new NoticeHost(
            database, _clock,
            settings:
            [
                ("Feeds:NationalWeatherService", $"{server.Address}"),
                ("Feeds:UserAgent", "(woods.example.org, office@example.org)"),
            ]);

        (await LooksAsync()).ShouldBe(1, "a forecast and an answer about alerts have come");
        (await LooksAsync()).ShouldBe(0, "nothing is new");
        alerts = Payload(Feature());
        (await LooksAsync()).ShouldBe(1, "a red flag warning was issued");

        async Task<int> LooksAsync()
        {
            host.Queued.Clear();
            _clock.AdvanceHours(1);
            await host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, Cancellation));
            host.Queued.ShouldAllBe(job => job.Type == typeof(WeatherLookJob));
            return host.Queued.Count(job => job.Args[0].Equals(organization)
                && ((Guid[])job.Args[2]).SequenceEqual(new[] { station }));
        }
    }
}
