using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.Options;
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
        await using var server = await ReplayServer.StartAsync(context =>
        {
            // However long the service calls its word fresh, a warning may have been issued since.
            context.Response.Headers.CacheControl = "public, max-age=86400";
            return SendAsync(context, alerts);
        });
        using var host = Host(server);

        (await LooksAsync()).ShouldBe(1, "a forecast and an answer about alerts have come");
        (await LooksAsync()).ShouldBe(0, "nothing is new");
        alerts = Payload(Feature());
        (await LooksAsync()).ShouldBe(1, "a red flag warning was issued");

        async Task<int> LooksAsync()
        {
            host.Queued.Clear();
            _clock.AdvanceHours(1);
            await host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, Cancellation));
            host.Queued.ShouldAllBe(job => job.Type == typeof(LookJob) && job.Args[0].Equals(organization));
            (await host.TakeDueAsync(organization)).Outlooks.ShouldBe(host.Queued.Count == 0 ? [] : [station]);
            return host.Queued.Count;
        }
    }

    [Fact]
    public async Task Run_GoesOnAndTells_WhenAStationCannotBeStored_AndFailsAtItsEnd()
    {
        var organization = await database.AddOrganizationAsync("Org");
        var broken = await GivenStation.StoreAsync(database, organization, "USC00000002", 42.745, -73.752);
        var sound = await GivenStation.StoreAsync(database, organization, "USC00000003", 42.745, -73.752);
        await using var server = await ReplayServer.StartAsync(context => SendAsync(context, Payload()));
        using var host = Host(server, new RefusingForecasts(broken));

        var fault = await Should.ThrowAsync<AggregateException>(() =>
            host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, Cancellation)));

        fault.InnerExceptions.ShouldHaveSingleItem().ShouldBeOfType<DbUpdateException>();
        host.Logs.Lines.ShouldContain(
            "Error: Forecasts for station USC00000002 were not stored: the other stations go on");
        await using var db = database.Open(organization);
        (await db.Forecasts.Select(forecast => forecast.StationId).ToListAsync(Cancellation)).ShouldBe([sound]);
        (await db.WeatherAlertReports.CountAsync(Cancellation)).ShouldBe(2);
        // The forecasts of April are too old in June, which is told of although a station fails.
        _clock.AdvanceDays(60);
        await Should.ThrowAsync<AggregateException>(() =>
            host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, Cancellation)));
        (await db.FeedStates.AnyAsync(state => state.StationId == sound && state.OutSeenAt != null, Cancellation))
            .ShouldBeTrue();
    }

    [Fact]
    public async Task Run_Ends_WhenItIsCancelled()
    {
        var organization = await database.AddOrganizationAsync("Org");
        await GivenStation.StoreAsync(database, organization, "USC00000004", 42.745, -73.752);
        await GivenStation.StoreAsync(database, organization, "USC00000005", 43.745, -73.752);
        using var stop = new CancellationTokenSource();
        await using var server = await ReplayServer.StartAsync(context =>
        {
            stop.Cancel();
            return SendAsync(context, Payload());
        });
        using var host = Host(server);

        await Should.ThrowAsync<OperationCanceledException>(() =>
            host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, stop.Token)));

        server.Requests.Count.ShouldBe(1);
    }

    [Fact]
    public async Task Run_AsksTheFeedThatTheSettingsName()
    {
        var organization = await database.AddOrganizationAsync("Org");
        await GivenStation.StoreAsync(database, organization, "USC00000006", 42.745, -73.752);
        await using var server = await ReplayServer.StartAsync(context => SendAsync(context, Payload()));
        using var host = Host(server, settings: ("Feeds:Forecasts", "nws-hourly"));

        await host.InScopeAsync<ForecastRound>(round => round.RunAsync(organization, Cancellation));

        server.Requests.Select(request => request.Path).ShouldBe(
            ["/points/42.745,-73.752", "/gridpoints/ALY/71,67/forecast/hourly", "/alerts/active"]);
        await using var db = database.Open(organization);
        (await db.Forecasts.CountAsync(Cancellation)).ShouldBe(1);
    }

    [Theory]
    [InlineData("ncei")]
    [InlineData("")]
    public void Feed_IsOneOfForecasts_OrTheServiceDoesNotStart(string key)
    {
        using var host = new NoticeHost(database, _clock, settings: [("Feeds:Forecasts", key)]);

        Should.Throw<OptionsValidationException>(() => host.Get<IOptions<ForecastOptions>>().Value).Message.ShouldBe(
            $"Feeds:Forecasts is '{key}', which no feed of forecasts is called: "
            + "nws-gridpoint, nws-hourly, open-meteo-forecast.");
    }

    private NoticeHost Host(
        ReplayServer server, IInterceptor? interceptor = null, params (string, string)[] settings) =>
        new(database, _clock, interceptor: interceptor, settings:
        [
            ("Feeds:NationalWeatherService", $"{server.Address}"),
            ("Feeds:UserAgent", "(woods.example.org, office@example.org)"),
            .. settings,
        ]);

    private static Task SendAsync(HttpContext context, ReadOnlyMemory<byte> alerts) => ReplayServer.SendAsync(
        context, 200, "application/geo+json",
        context.Request.Path.StartsWithSegments("/alerts")
            ? alerts
            : File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast{context.Request.Path}.json")));

    /// <summary>A database that does not take the forecasts of one station.</summary>
    private sealed class RefusingForecasts(Guid station) : SaveChangesInterceptor
    {
        public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
            DbContextEventData eventData, InterceptionResult<int> result,
            CancellationToken cancellationToken = default) =>
            eventData.Context!.ChangeTracker.Entries<Service.Weather.Forecast>()
                .Any(entry => entry.State == EntityState.Added && entry.Entity.StationId == station)
                ? throw new DbUpdateException("The disk is full.")
                : new(result);
    }
}
