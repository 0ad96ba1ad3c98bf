using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>
/// A parcel's temperatures are blended from other stations than before, or from the same ones elsewhere.
/// </summary>
public sealed class BlendChangeTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private const string OwnId = "USC00200001";
    private const string NeighbourId = "USC00200002";
    private const string FarId = "USC00470001";

    private readonly FakeClock _clock = new(Now);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(42.95, -84.5, 250d)]
    [InlineData(42.9, -84.4, 250d)]
    [InlineData(42.9, -84.5, 300d)]
    [InlineData(42.9, -84.5, null)]
    public async Task Put_IsSeenByTheRecordAtOnce_AndHasTheTasksLookedAt(
        double latitudeDeg, double longitudeDeg, double? elevationM)
    {
        var (land, neighbour) = await BlendAsync();
        using var host = new NoticeHost(database, _clock);
        await ImportAsync(host, land, OwnId, "20260201,TMIN,-30");
        await ImportAsync(host, land, NeighbourId, "20260201,TMIN,-40");
        await SayWholeAsync(land);
        await PutAsync(new("Neighbour", 42.9, -84.5, 250));
        await PlaceOfNeighbourAsync();
        await host.TakeDueAsync(land.Organization);
        host.Queued.Clear();
        await PutAsync(new("Another name", 42.9, -84.5, 250));
        host.Queued.ShouldBeEmpty("a name is no place");

        await PutAsync(new("Another name", latitudeDeg, longitudeDeg, elevationM));

        (await PlaceOfNeighbourAsync()).ShouldBe((latitudeDeg, longitudeDeg, elevationM));
        host.Queued.ShouldHaveSingleItem().Type.ShouldBe(typeof(LookJob));
        (await host.TakeDueAsync(land.Organization)).Records.ShouldBe([neighbour]);

        Task PutAsync(StationForm form) => host.InOrganizationAsync<StationHandler>(
            land.Organization, stations => stations.PutAsync(NeighbourId, form, Cancellation));

        async Task<(double, double, double?)> PlaceOfNeighbourAsync()
        {
            var source = await SourceAsync(host, land);
            ParcelRecord? record = null;
            await host.InOrganizationAsync<ParcelRecords>(land.Organization, async records =>
                record = await records.OfAsync(source, _clock.GetCurrentInstant(), Cancellation));
            var station = record!.Stations.Single(part => part.Station.Id == NeighbourId).Station;
            return (station.LatitudeDeg, station.LongitudeDeg, station.ElevationM);
        }
    }

    [Fact]
    public async Task Choice_MovesTheParcel_WhenItMakesOneStationOfABlend_AndWhenItIsTakenBack()
    {
        var (land, neighbour) = await BlendAsync();
        using var host = new NoticeHost(database, _clock);

        (await ChooseAsync(OwnId)).ShouldBe([land.Parcel]);
        (await StationsAsync(host, land)).ShouldBe([land.Station]);
        (await ChooseAsync(OwnId)).ShouldBeEmpty("the same again");
        (await ChooseAsync(null)).ShouldBe([land.Parcel]);
        (await StationsAsync(host, land)).ShouldBe([land.Station, neighbour]);

        async Task<Guid[]> ChooseAsync(string? ghcnId)
        {
            Guid[] moved = [];
            await host.InOrganizationAsync<IServiceProvider>(land.Organization, async scope =>
            {
                var stations = scope.GetRequiredService<StationAssignment>();
                await using var db = land.Open();
                var chosen = await db.Stations.SingleOrDefaultAsync(row => row.GhcnId == ghcnId, Cancellation);
                var before = await stations.UsedAsync(Cancellation);
                await stations.ChooseAsync(land.Parcel, StationPurpose.Temperature, chosen, Cancellation);
                moved = [.. await stations.AssignAsync(before, Cancellation)];
            });
            return moved;
        }
    }

    [Fact]
    public async Task Import_HasTheTasksLookedAt_WhenANeighbourDropsOutBecauseAnotherRecordIsNewer()
    {
        var (land, neighbour) = await BlendAsync();
        await using (var db = land.Open())
        {
            db.Add(new Station
            {
                GhcnId = FarId,
                Name = "Bluff",
                Latitude = 30,
                Longitude = -90,
                WholeFahrenheit = true,
            });
            await db.SaveChangesAsync(Cancellation);
            await db.Stations.Where(row => row.Id == land.Station).ExecuteUpdateAsync(
                rows => rows.SetProperty(row => row.LastDay, Today.PlusDays(-10)), Cancellation);
            // Within a year of the newest day, and a day more than a year before the one that comes.
            await db.Stations.Where(row => row.Id == neighbour).ExecuteUpdateAsync(
                rows => rows.SetProperty(row => row.LastDay, Today.PlusDays(-2).PlusYears(-1)), Cancellation);
        }
        using var host = new NoticeHost(database, _clock);
        (await StationsAsync(host, land)).ShouldBe([land.Station, neighbour]);

        await ImportAsync(host, land, FarId, "20260201,TMIN,-30");

        (await StationsAsync(host, land)).ShouldBe([land.Station]);
        (await host.TakeDueAsync(land.Organization)).Parcels.ShouldBe([land.Parcel]);
    }

    [Fact]
    public async Task Import_HasTheTasksLookedAt_WhenTheNeighboursOwnRecordBecomesTooThin()
    {
        var (land, neighbour) = await BlendAsync();
        using var host = new NoticeHost(database, _clock);

        // Its coverage is reckoned anew from the one day that it has.
        await ImportAsync(host, land, NeighbourId, "20260201,TMIN,-30");

        (await StationsAsync(host, land)).ShouldBe([land.Station]);
        var due = await host.TakeDueAsync(land.Organization);
        due.Records.ShouldBe([neighbour]);
        due.Parcels.ShouldBe([land.Parcel]);
    }

    /// <summary>A parcel between two stations with whole records, by what is said of them.</summary>
    private async Task<(GivenLand Land, Guid Neighbour)> BlendAsync()
    {
        var land = await GivenLand.StoreAsync(database);
        await using var db = land.Open();
        var neighbour = new Station
        {
            GhcnId = NeighbourId,
            Name = "Neighbour",
            Latitude = 42.9,
            Longitude = -84.5,
            WholeFahrenheit = true,
        };
        db.Add(neighbour);
        await db.SaveChangesAsync(Cancellation);
        await SayWholeAsync(land);
        return (land, neighbour.Id);
    }

    private static async Task SayWholeAsync(GivenLand land)
    {
        await using var db = land.Open();
        await db.Stations.ExecuteUpdateAsync(
            rows => rows.SetProperty(row => row.LastDay, Today.PlusDays(-1))
                .SetProperty(row => row.TemperatureCoverage, 1), Cancellation);
    }

    /// <summary>Stores a reading, by which the coverage of its station is reckoned anew.</summary>
    private static Task ImportAsync(NoticeHost host, GivenLand land, string ghcnId, string reading) =>
        host.InOrganizationAsync<StationImportHandler>(land.Organization, imports => imports.ImportAsync(
            ghcnId, new MemoryStream(Encoding.ASCII.GetBytes($"{ghcnId},{reading},,,0,\n")), null, Cancellation));

    private static async Task<Guid[]> StationsAsync(NoticeHost host, GivenLand land) =>
        [.. (await SourceAsync(host, land)).Temperature.Select(station => station.Id)];

    private static async Task<WeatherSource> SourceAsync(NoticeHost host, GivenLand land)
    {
        WeatherSource? source = null;
        await host.InOrganizationAsync<ParcelSources>(land.Organization, async sources =>
            source = (await sources.OfAsync([land.Parcel], Cancellation))[land.Parcel]);
        return source!;
    }
}
