using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using static WorkWindows.Feeds.Tests.Alerts.AlertJson;

namespace WorkWindows.Service.Tests.Weather;

public sealed class AlertHandlerTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Instant.FromUtc(2026, 4, 12, 12, 0));

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fetch_KeepsTheAlertsOfEachStation_AndGoesOnWhenOneHasNone()
    {
        var organization = await database.AddOrganizationAsync("Org");
        await GivenStation.StoreAsync(database, organization, "USC00000001", 40, -60);
        var albany = await GivenStation.StoreAsync(database, organization, "USC00000002", 42.745, -73.752);
        await GivenStation.StoreAsync(database, organization, "USC00000003", 43, -73, StationPurpose.Wind);
        await using var server = await ReplayServer.StartAsync(context => context.Request.Query["point"] == "40,-60"
            ? ReplayServer.SendAsync(context, 400, "application/problem+json", "{\"title\": \"Refused\"}"u8.ToArray())
            : SendAsync(context, Payload(Feature())));

        (await FetchAsync(organization, server)).ShouldBe(1);

        await using var db = database.Open(organization);
        var report = await db.WeatherAlertReports.Include(kept => kept.Alerts).SingleAsync(Cancellation);
        (report.StationId, report.FetchedAt).ShouldBe((albany, _clock.GetCurrentInstant()));
        var alert = report.Alerts.ShouldHaveSingleItem();
        (alert.Kind, alert.Event, alert.StartsAt, alert.EndsAt).ShouldBe((
            AlertKind.RedFlag, "Red Flag Warning", Instant.FromUtc(2026, 4, 12, 11, 0),
            Instant.FromUtc(2026, 4, 12, 15, 0)));
    }

    [Fact]
    public async Task Fetch_KeepsNothing_OfAReplyWithOneUnreadableAlert()
    {
        var organization = await database.AddOrganizationAsync("Unreadable");
        await GivenStation.StoreAsync(database, organization, "USC00000004", 42.745, -73.752);
        await using var server = await ReplayServer.StartAsync(
            context => SendAsync(context, Payload(Feature(), Feature(("ends", "\"soon\"")))));

        (await FetchAsync(organization, server)).ShouldBe(0);

        await using var db = database.Open(organization);
        (await db.WeatherAlertReports.AnyAsync(Cancellation)).ShouldBeFalse();
    }

    [Fact]
    public async Task Fetch_CountsAStation_WhoseAlertsBecameKnownOrChanged()
    {
        var organization = await database.AddOrganizationAsync("Changing");
        await GivenStation.StoreAsync(database, organization, "USC00000005", 42.745, -73.752);
        var reply = Payload();
        await using var server = await ReplayServer.StartAsync(context => SendAsync(context, reply));
        var wind = Feature(("event", Quoted("Wind Advisory")));

        (await NextAsync(0, [])).ShouldBe(1, "the first answer ends the doubt");
        (await NextAsync(1, [])).ShouldBe(0);
        (await NextAsync(1, [Feature()])).ShouldBe(1);
        (await NextAsync(1, [wind, Feature()])).ShouldBe(1);
        (await NextAsync(1, [Feature(), wind])).ShouldBe(0, "in another order");
        (await NextAsync(1, [wind])).ShouldBe(1);
        (await NextAsync(4, [wind])).ShouldBe(1, "for three hours nothing was known");

        async Task<int> NextAsync(int hours, string[] features)
        {
            _clock.AdvanceHours(hours);
            reply = Payload(features);
            return await FetchAsync(organization, server);
        }
    }

    private async Task<int> FetchAsync(Guid organization, ReplayServer server)
    {
        using var feeds = new TestFeeds(server.Address);
        await using var db = database.Open(organization);
        var states = new FeedStates(db, _clock);
        var fetches = new StationFetches(db, states, NullLogger<StationFetches>.Instance);
        await new AlertHandler(
            db, new(feeds.Http, feeds.Options), fetches, states, NoJobs.Look(db, _clock), _clock)
            .FetchAsync(Cancellation);
        var noted = await db.DueLooks.CountAsync(Cancellation);
        await db.DueLooks.ExecuteDeleteAsync(Cancellation);
        return noted;
    }

    private static Task SendAsync(HttpContext context, ReadOnlyMemory<byte> body) =>
        ReplayServer.SendAsync(context, 200, "application/geo+json", body);
}
