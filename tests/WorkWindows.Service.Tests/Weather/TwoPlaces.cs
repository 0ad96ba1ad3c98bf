using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>
/// A land with a task, and a second property far away with a station, an owner and a task of its own. Nothing was
/// decided about either, so that whatever is looked at leaves a decision.
/// </summary>
internal sealed record TwoPlaces(GivenLand Near, Guid FarStation, Guid FarParcel, Guid NearTask, Guid FarTask)
{
    public const string NearId = "USC00200001";
    public const string FarId = "USC00470001";

    public static async Task<TwoPlaces> StoreAsync(TestDatabase database, bool sameOwner = false)
    {
        var near = await GivenLand.StoreAsync(database);
        await using var db = near.Open();
        var property = new Property
        {
            Key = "BR",
            Name = "Bluff Ridge",
            LandownerId = sameOwner ? near.Owner : null,
            CountyFips = "55001",
            State = "WI",
            TimeZone = "America/Chicago",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = "BR-1",
            Name = "South Slope",
            Latitude = 44,
            Longitude = -90,
            Stand = [new("sugar maple", 4, 8, 120)],
        };
        var station = new Station
        {
            GhcnId = FarId,
            Name = "Bluff",
            Latitude = 44,
            Longitude = -90,
            WholeFahrenheit = true,
        };
        var task = GivenLand.NewTask(parcel.Id, "T-2", "hinge-cut", near.Lead);
        db.AddRange(property, parcel, station, task, new ParcelStation
        {
            ParcelId = parcel.Id,
            StationId = station.Id,
            Purpose = StationPurpose.Temperature,
            DistanceM = 0,
            IsManual = true,
        });
        await db.ParcelStations.Where(link => link.ParcelId == near.Parcel)
            .ExecuteUpdateAsync(links => links.SetProperty(link => link.IsManual, true));
        await db.SaveChangesAsync();
        var nearTask =
            await db.PlannedTasks.Where(row => row.ParcelId == near.Parcel).Select(row => row.Id).SingleAsync();
        return new(near, station.Id, parcel.Id, nearTask, task.Id);
    }
}
