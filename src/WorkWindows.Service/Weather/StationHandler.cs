using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Feeds.Stations;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>A station as someone describes it.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Latitude">Degrees north, WGS 84.</param>
/// <param name="Longitude">Degrees east, WGS 84.</param>
/// <param name="ElevationM">Metres above sea level, or null where it is not known.</param>
public sealed record StationForm(string? Name, double? Latitude, double? Longitude, double? ElevationM);

/// <summary>Keeps the list of stations.</summary>
public sealed class StationHandler(
    WorkWindowsDb db, CurrentOrganization organization, StationAssignment stations, PromptLook look)
{
    private const double LowestM = -500, HighestM = 9_000;

    /// <summary>Adds a station, or changes what is known of one that is there.</summary>
    public async Task<Change<Station>> PutAsync(string ghcnId, StationForm form, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        faults.Required("ghcnId", ghcnId, StationIds.IsId, StationIds.Accepted);
        var name = faults.Required("name", form.Name, FieldText.IsName, FieldText.Name);
        if (form.Latitude is not (>= -90 and <= 90))
            faults.Add("latitude", form.Latitude, "degrees north from -90 to 90");
        if (form.Longitude is not (>= -180 and <= 180))
            faults.Add("longitude", form.Longitude, "degrees east from -180 to 180; west is negative");
        if (form.ElevationM is not (null or (>= LowestM and <= HighestM)))
            faults.Add(
                "elevationM", form.ElevationM, $"metres above sea level from {LowestM} to {HighestM}, or nothing");
        if (faults.Any)
            return Change.Refused<Station>(faults);

        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var before = await stations.UsedAsync(cancellation);
        var station = await db.Stations.SingleOrDefaultAsync(row => row.GhcnId == ghcnId, cancellation);
        if (station is null)
        {
            station = new Station
            {
                GhcnId = ghcnId,
                Name = name,
                Latitude = form.Latitude!.Value,
                Longitude = form.Longitude!.Value,
                WholeFahrenheit = Stations.ReadUsUnits(ghcnId),
            };
            db.Add(station);
        }
        (station.Name, station.ElevationM) = (name, form.ElevationM);
        (station.Latitude, station.Longitude) = (form.Latitude!.Value, form.Longitude!.Value);
        var isElsewhere = IsElsewhere(db.Entry(station));
        // Its readings are blended by where it stands, and what was blended before is kept by the version.
        if (isElsewhere)
            station.RecordVersion++;
        await db.SaveChangesAsync(cancellation);
        var moved = await stations.AssignAsync(before, cancellation);
        look.Note(new WeatherChange(isElsewhere ? [station.Id] : [], [], moved));
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(station);
    }

    private static bool IsElsewhere(EntityEntry<Station> station) =>
        station.Property(row => row.Latitude).IsModified
        || station.Property(row => row.Longitude).IsModified
        || station.Property(row => row.ElevationM).IsModified;
}
