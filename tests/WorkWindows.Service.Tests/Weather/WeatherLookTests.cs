using System.Text;
using Hangfire;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>What late readings have looked at again: the tasks that they touch and no others.</summary>
public sealed class WeatherLookTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Now);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Import_HasOnlyTheTasksOfItsStationLookedAt()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await ImportAsync(host, places, "TMIN,-30");
        await host.LookAsync(places.Near.Organization);

        (await DecidedAsync(places)).ShouldBe([places.NearTask]);
    }

    [Fact]
    public async Task Import_HasNothingLookedAt_WhenItChangesNothing()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await ImportAsync(host, places, "TMIN,-30");
        host.Queued.Clear();
        _clock.AdvanceHours(1);

        await ImportAsync(host, places, "TMIN,-30");

        host.Queued.ShouldBeEmpty();
    }

    [Fact]
    public async Task Look_AddsNothing_WhenItRunsAgain()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await ForecastAsync(places, "oooooooo");
        await ImportAsync(host, places, "TMIN,-30");
        await host.LookAsync(places.Near.Organization);
        var before = await CountsAsync(places);
        _clock.AdvanceMinutes(1);
        await host.NoteAsync(places.Near.Organization, WeatherChange.OfRecords([places.Near.Station]));

        await host.LookAsync(places.Near.Organization);

        before.ShouldBe((1, 1, 1), "a decision, a good-to-cut mail and its announcement");
        (await CountsAsync(places)).ShouldBe(before);
    }

    [Fact]
    public async Task Look_StoresADecisionAndStopsTheWork_WhenACorrectionClosesADay()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);
        await ForecastAsync(places, "oooooooo");
        await host.RunNightAsync(places.Near.Organization);
        await using (var db = places.Near.Open())
        {
            db.Add(Told(places.NearTask, places.Near.Owner));
            db.Add(Told(places.FarTask, places.Near.Lead));
            await db.SaveChangesAsync(Cancellation);
        }
        _clock.AdvanceHours(1);
        await places.Near.ForecastAsync("ccoooooo", Today, _clock.GetCurrentInstant());

        await LookAsync(host, places, [places.Near.Station]);

        await using var stored = places.Near.Open();
        var stopped = await stored.Announcements.Where(window => window.StoppedAt == _clock.GetCurrentInstant())
            .Select(window => window.TaskId).Distinct().ToListAsync(Cancellation);
        stopped.ShouldBe([places.NearTask], "what was said of other tasks stands");
        (await stored.Messages.Where(message => message.Kind == NoticeKinds.StopWork)
            .Select(message => message.RecipientId).Distinct().CountAsync(Cancellation)).ShouldBe(2, "owner and lead");
        (await stored.Decisions.CountAsync(row => row.TaskId == places.NearTask, Cancellation)).ShouldBe(2);
        (await stored.Decisions.CountAsync(row => row.TaskId == places.FarTask, Cancellation)).ShouldBe(1);
    }

    [Fact]
    public async Task Look_LeavesTheOffersToTheNight_WhenItSeesOnlyAPartOfAnOwnersTasks()
    {
        var places = await TwoPlaces.StoreAsync(database, sameOwner: true);
        using var host = new NoticeHost(database, _clock);
        await ForecastAsync(places, "oooooooo");

        await LookAsync(host, places, [places.Near.Station]);
        (await CountsAsync(places)).ShouldBe((1, 0, 0));
        await LookAsync(host, places, [places.Near.Station, places.FarStation]);

        (await CountsAsync(places)).Messages.ShouldBe(1, "one mail for all of the owner's tasks");
    }

    [Fact]
    public async Task Look_SeesTheParcelsThatChangedTheirStation()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await host.NoteAsync(places.Near.Organization, WeatherChange.OfParcels([places.FarParcel]));
        await host.LookAsync(places.Near.Organization);

        (await DecidedAsync(places)).ShouldBe([places.FarTask]);
    }

    [Fact]
    public async Task Look_SeesAParcel_WhenARecordIsBlendedIntoItsOwn_AndNotForItsForecast()
    {
        var land = await GivenLand.StoreAsync(database);
        var neighbour = await GivenStation.StoreAsync(database, land.Organization, "USC00200002", 42.9, -84.5);
        await using (var db = land.Open())
        {
            await db.Stations.ExecuteUpdateAsync(stations => stations
                .SetProperty(station => station.LastDay, Today.PlusDays(-1))
                .SetProperty(station => station.TemperatureCoverage, 1), Cancellation);
        }
        using var host = new NoticeHost(database, _clock);

        (await TouchedAsync(WeatherChange.OfRecords([neighbour]))).ShouldContain(land.Parcel);
        (await TouchedAsync(WeatherChange.OfOutlooks([neighbour]))).ShouldNotContain(land.Parcel);
        (await TouchedAsync(WeatherChange.OfOutlooks([land.Station]))).ShouldBe([land.Parcel]);

        async Task<IReadOnlyCollection<Guid>> TouchedAsync(WeatherChange change)
        {
            IReadOnlyCollection<Guid> touched = [];
            await host.InOrganizationAsync<ParcelSources>(
                land.Organization, async sources => touched = await sources.TouchedByAsync(change, Cancellation));
            return touched;
        }
    }

    [Fact]
    public async Task Change_IsLookedAt_ThoughTheServiceDiedBeforeItsLookWasBegun()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var dying = new NoticeHost(database, _clock, loseJobs: true);
        await Should.ThrowAsync<BackgroundJobClientException>(() => ImportAsync(dying, places, "TMIN,-30"));
        using var next = new NoticeHost(database, _clock);

        await next.InScopeAsync<LookRound>(round => round.RunAsync(Cancellation));
        next.Queued.ShouldContain(job => job.Type == typeof(LookJob) && job.Args[0].Equals(places.Near.Organization));
        await next.LookAsync(places.Near.Organization);
        (await DecidedAsync(places)).ShouldBe([places.NearTask]);

        next.Queued.Clear();
        await next.InScopeAsync<LookRound>(round => round.RunAsync(Cancellation));
        next.Queued.ShouldNotContain(job => job.Args[0].Equals(places.Near.Organization));
    }

    [Fact]
    public async Task Put_HasTheTasksLookedAt_WhenAStationIsMoved_AndNotWhenItIsNamed()
    {
        var places = await TwoPlaces.StoreAsync(database);
        using var host = new NoticeHost(database, _clock);

        await PutAsync(new("Another name", 42.7, -84.5, null));
        host.Queued.ShouldBeEmpty();
        await PutAsync(new("Another name", 42.8, -84.5, null));

        host.Queued.ShouldHaveSingleItem();
        (await host.TakeDueAsync(places.Near.Organization)).Records.ShouldBe([places.Near.Station]);

        Task PutAsync(StationForm form) => In<StationHandler>(host, places, stations =>
            stations.PutAsync(TwoPlaces.NearId, form, Cancellation));
    }

    /// <summary>Puts one reading of yesterday into the record of the near station.</summary>
    private static Task ImportAsync(NoticeHost host, TwoPlaces places, string reading) =>
        In<StationImportHandler>(host, places, imports => imports.ImportAsync(
            TwoPlaces.NearId,
            new MemoryStream(Encoding.ASCII.GetBytes($"{TwoPlaces.NearId},20260201,{reading},,,0,\n")), null, Cancellation));

    private static async Task LookAsync(NoticeHost host, TwoPlaces places, Guid[] stations)
    {
        await host.NoteAsync(places.Near.Organization, WeatherChange.OfOutlooks(stations));
        await host.LookAsync(places.Near.Organization);
    }

    private static Task In<T>(NoticeHost host, TwoPlaces places, Func<T, Task> use) where T : notnull =>
        host.InOrganizationAsync(places.Near.Organization, use);

    private static async Task ForecastAsync(TwoPlaces places, string days)
    {
        foreach (var land in new[] { places.Near, places.Near with { Station = places.FarStation } })
        {
            await land.ForecastAsync(days, Today, Now - Duration.FromHours(5));
            await land.NoAlertsAsync(Now - Duration.FromMinutes(10));
        }
    }

    private static Announcement Told(Guid task, Guid person) => new()
    {
        TaskId = task,
        PersonId = person,
        FirstDay = Today,
        LastDay = Today.PlusDays(3),
        AnnouncedAt = Now,
    };

    private static async Task<List<Guid>> DecidedAsync(TwoPlaces places)
    {
        await using var db = places.Near.Open();
        return await db.Decisions.Select(decision => decision.TaskId).ToListAsync(Cancellation);
    }

    private static async Task<(int Decisions, int Messages, int Announced)> CountsAsync(TwoPlaces places)
    {
        await using var db = places.Near.Open();
        return (
            await db.Decisions.CountAsync(Cancellation), await db.Messages.CountAsync(Cancellation),
            await db.Announcements.CountAsync(Cancellation));
    }
}
