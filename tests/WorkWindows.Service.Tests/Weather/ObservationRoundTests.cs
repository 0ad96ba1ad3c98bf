using Hangfire.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Testing;
using Npgsql;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

public sealed class ObservationRoundTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    /// <summary>Noon in Detroit.</summary>
    private readonly FakeClock _clock = new(Instant.FromUtc(2026, 2, 20, 17, 0));

    private readonly InventedFeed _feed = new();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Run_StoresWhatIsNewAndWhatWasCorrected_AndHasThoseTasksLookedAt()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        _feed.Answer = station => station == TwoPlaces.NearId ? [Min(18, -3), Min(19, -4)] : [];
        (await RunAsync(host, places)).ShouldBe([places.Near.Station]);

        _clock.AdvanceHours(6);
        (await RunAsync(host, places)).ShouldBeEmpty("the same again");
        _feed.Answer = station => station == TwoPlaces.NearId ? [Min(18, -5), Min(19, -4)] : [];
        (await RunAsync(host, places)).ShouldBe([places.Near.Station], "a correction");
        (await RunAsync(host, places)).ShouldBeEmpty("the correction again");

        await using var db = places.Near.Open();
        (await db.StationReadings.OrderBy(reading => reading.Date).Select(reading => reading.Value)
            .ToListAsync(Cancellation)).ShouldBe([-5, -4]);
        (await db.SupersededReadings.SingleAsync(Cancellation)).Value.ShouldBe(-3);
    }

    [Fact]
    public async Task Run_AsksForTheDaysSinceTheLastOne_ForThirtyAgain_AndForDecadesAtFirst()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        _feed.Answer = station => station == TwoPlaces.NearId
            ? [Min(19, -4)]
            : [Min(1, -4) with { Date = new(2025, 12, 1) }];
        await RunAsync(host, places);
        await RunAsync(host, places);

        _feed.Requests.Select(request => $"{request.Place.GhcnId} {request.Days.Start:R} {request.Days.End:R}").ShouldBe([
            $"{TwoPlaces.NearId} 1986-02-19 2026-02-19",
            $"{TwoPlaces.FarId} 1986-02-19 2026-02-19",
            $"{TwoPlaces.NearId} 2026-01-21 2026-02-19",
            $"{TwoPlaces.FarId} 2025-12-02 2026-02-19",
        ]);
        _feed.Requests[0].Zone.Id.ShouldBe("America/Detroit");
        _feed.Requests[1].Zone.Id.ShouldBe("America/Chicago");
    }

    [Fact]
    public async Task Run_GoesOn_WhenAStationCannotBeHad_AndKeepsWhy()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        _feed.Answer = station => station == TwoPlaces.NearId
            ? throw new FeedFormatException("The reply is no JSON.")
            : [Min(19, -4)];

        (await RunAsync(host, places)).ShouldBe([places.FarStation]);

        await using var db = places.Near.Open();
        var states = await db.FeedStates.ToDictionaryAsync(state => state.StationId, Cancellation);
        var (near, far) = (states[places.Near.Station], states[places.FarStation]);
        (near.LastError, near.LastSuccessAt, near.NewestAt).ShouldBe(("The reply is no JSON.", null, null));
        (far.LastError, far.LastSuccessAt, far.NewestAt)
            .ShouldBe((null, _clock.GetCurrentInstant(), Instant.FromUtc(2026, 2, 20, 0, 0)));
    }

    [Fact]
    public async Task Run_HasLookedAtWhatItStored_WhenItDiesLater()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        _feed.Answer = station => station == TwoPlaces.NearId
            ? [Min(19, -4)]
            : throw new InvalidOperationException("No feed throws this.");

        await Should.ThrowAsync<AggregateException>(() => RunAsync(host, places));

        (await host.TakeDueAsync(places.Near.Organization)).Records.ShouldBe([places.Near.Station]);
    }

    [Fact]
    public async Task Run_GoesOnAndTells_WhenARecordCannotBeChanged_AndFailsAtItsEnd()
    {
        var places = await TwoPlaces.StoreAsync(database);
        await places.Near.AddConsultantAsync();
        await using (var db = places.Near.Open())
        {
            // Written by a server whose clock was ahead.
            var ahead = _clock.GetCurrentInstant() + Duration.FromDays(90);
            await db.Stations.Where(station => station.Id == places.Near.Station).ExecuteUpdateAsync(
                rows => rows.SetProperty(row => row.RecordChangedAt, ahead), Cancellation);
        }
        using var host = Host();
        _feed.Answer = _ => [Min(1, -4)];

        var fault = await Should.ThrowAsync<AggregateException>(() => RunAsync(host, places));

        fault.InnerExceptions.ShouldHaveSingleItem().ShouldBeOfType<ClockSetBackException>();
        host.Logs.Lines.ShouldContain(line => line.StartsWith(
            $"Error: Observations for station {TwoPlaces.NearId} were not stored", StringComparison.Ordinal));
        (await host.TakeDueAsync(places.Near.Organization)).Records.ShouldBe([places.FarStation]);
        await using var stored = places.Near.Open();
        (await stored.StationReadings.Select(reading => reading.StationId).ToListAsync(Cancellation))
            .ShouldBe([places.FarStation]);
        (await stored.FeedStates.SingleAsync(state => state.StationId == places.Near.Station, Cancellation)).LastError
            .ShouldNotBeNull();
        (await stored.Messages.SingleAsync(message => message.Kind == NoticeKinds.Outage, Cancellation))
            .TextBody.ShouldContain(TwoPlaces.FarId);
    }

    /// <summary>Rain keeps being read at many stations whose thermometers are gone.</summary>
    [Fact]
    public async Task Run_TellsThatTemperaturesStopped_WhileRainIsStillRead()
    {
        var places = await TwoPlaces.StoreAsync(database);
        await places.Near.AddConsultantAsync();
        using var host = Host();
        DailyReading[] rain =
            [.. Enumerable.Range(1, 19).Select(
                day => Min(day, day % 3) with { Element = DailyElement.PrecipitationMm })];
        _feed.Answer = station => station == TwoPlaces.NearId
            ? [.. rain, Min(1, -4)]
            : [.. rain, Min(18, -4), Min(18, 4) with { Element = DailyElement.MaxTemperatureC }];

        await RunAsync(host, places);

        await using var db = places.Near.Open();
        (await db.Stations.OrderBy(station => station.GhcnId).ToDictionaryAsync(
            station => station.GhcnId, Cancellation))
            .Select(station => (station.Key, station.Value.LastDay)).ShouldBe(
                [(TwoPlaces.NearId, new LocalDate(2026, 2, 1)), (TwoPlaces.FarId, new LocalDate(2026, 2, 18))], true);
        var mail = await db.Messages.SingleAsync(message => message.Kind == NoticeKinds.Outage, Cancellation);
        mail.TextBody.ShouldContain("the last reading is of Sun 1 Feb");
        mail.TextBody.ShouldNotContain(TwoPlaces.FarId);
    }

    [Fact]
    public async Task Run_GoesOn_WhenTheDatabaseRefusesAStation()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        // No feed gives a day twice; the table does not take it.
        _feed.Answer = station => station == TwoPlaces.NearId ? [Min(19, -4), Min(19, -4)] : [Min(19, -4)];

        var fault = await Should.ThrowAsync<AggregateException>(() => RunAsync(host, places));

        fault.InnerExceptions.ShouldHaveSingleItem().ShouldBeOfType<PostgresException>();
        (await host.TakeDueAsync(places.Near.Organization)).Records.ShouldBe([places.FarStation]);
    }

    [Fact]
    public async Task Run_LeavesOutReadingsOfDaysToCome_AndNamesThem()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = Host();
        _feed.Answer = station => station == TwoPlaces.NearId
            ? [Min(19, -4), Min(21, -5), Min(1, -6) with { Date = new(2199, 1, 1) }]
            : [];

        await RunAsync(host, places);

        await using var db = places.Near.Open();
        (await db.Stations.SingleAsync(station => station.Id == places.Near.Station, Cancellation)).LastDay
            .ShouldBe(new LocalDate(2026, 2, 19));
        host.Logs.Lines.Count(line => line.Contains(
            $"MinTemperatureC of station {TwoPlaces.NearId} on ", StringComparison.Ordinal)).ShouldBe(2);
    }

    [Fact]
    public async Task Run_AsksNobody_WithoutAFeedOrAStationInUse()
    {
        var organization = await database.AddOrganizationAsync("No land");
        using var host = Host();
        await host.InScopeAsync<ObservationRound>(round => round.RunAsync(organization, Cancellation));
        var places = await TwoPlaces.StoreAsync(database);
        using var unset = new NoticeHost(database, _clock, feed: _feed);
        await RunAsync(unset, places);

        _feed.Requests.ShouldBeEmpty();
    }

    [Fact]
    public async Task Start_GivesEachOrganizationAJobOfItsOwn_SoThatOneThatFailsStopsNoOther()
    {
        var (one, other) = (await database.AddOrganizationAsync("One"), await database.AddOrganizationAsync("Other"));
        using var host = Host();

        await host.InScopeAsync<WeatherRounds>(rounds => rounds.StartObservationsAsync(Cancellation));
        await host.InScopeAsync<WeatherRounds>(rounds => rounds.StartForecastsAsync(Cancellation));

        foreach (var job in new[] { typeof(ObservationRoundJob), typeof(ForecastRoundJob) })
        {
            var organizations = host.Queued.Where(queued => queued.Type == job).Select(queued => (Guid)queued.Args[0]);
            organizations.Count(id => id == one || id == other).ShouldBe(2);
        }
    }

    /// <summary>The archive of Open-Meteo is a model's, and would take the place of what was read.</summary>
    [Theory]
    [InlineData("invent")]
    [InlineData("nws-gridpoint")]
    [InlineData("open-meteo-archive")]
    public void Feed_IsNamedInTheSettings_OrTheServiceDoesNotStart(string key)
    {
        using var host = new NoticeHost(database, _clock, feed: _feed, settings: [(InventedFeed.Setting, key)]);

        Should.Throw<OptionsValidationException>(() => host.Get<IOptions<ObservationOptions>>().Value).Message.ShouldBe(
            $"Feeds:Observations is '{key}', which no feed of observations is called: "
            + "acis, ghcn-daily, invented, ncei, plain-csv.");
    }

    private static DailyReading Min(int day, double value) =>
        new(new(2026, 2, day), DailyElement.MinTemperatureC, value, null);

    private NoticeHost Host() =>
        new(database, _clock, feed: _feed, settings: [(InventedFeed.Setting, _feed.Key), ("Feeds:UserAgent", "office@example.org")]);

    /// <returns>The stations whose tasks are to be looked at.</returns>
    private static async Task<IReadOnlyCollection<Guid>> RunAsync(NoticeHost host, TwoPlaces places)
    {
        await host.InScopeAsync<ObservationRound>(round => round.RunAsync(places.Near.Organization, Cancellation));
        return (await host.TakeDueAsync(places.Near.Organization)).Records;
    }
}
