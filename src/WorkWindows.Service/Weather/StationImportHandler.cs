using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Stations;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// Stores a station's file: all of it or nothing, and the same file again changes nothing. The tasks that it touches
/// are looked at.
/// </summary>
public sealed class StationImportHandler(
    WorkWindowsDb db, CurrentOrganization organization, StationReadings readings, StationAssignment stations,
    PromptLook look, IClock clock)
{
    /// <param name="ghcnId">The station, whose readings the file must hold.</param>
    /// <param name="file">Its record, in a form that docs/files.md describes.</param>
    /// <param name="units">
    /// <c>metric</c>, <c>standard</c> or <c>tenths</c> for a file that does not name its units; null where none were
    /// said.
    /// </param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    /// <returns>Null when there is no such station.</returns>
    public async Task<ImportOutcome<ImportCounts>?> ImportAsync(
        string ghcnId, Stream file, string? units, CancellationToken cancellation)
    {
        var known = await db.Stations.AsNoTracking().SingleOrDefaultAsync(row => row.GhcnId == ghcnId, cancellation);
        if (known is null)
            return null;
        StationUnits? said = units switch
        {
            "metric" => StationUnits.Metric,
            "standard" => StationUnits.Standard,
            "tenths" => StationUnits.Tenths,
            _ => null,
        };
        if (units is not null && said is null)
            return ImportOutcome.Refused<ImportCounts>(
                new([new(null, "units", units, "metric, standard or tenths")], 0));
        // A reading of a day to come would be the last one for ever, and make every other record look closed.
        var today = clock.GetCurrentInstant().InZone(known.Zone).Date;
        var import = StationFile.Read(file, new(ghcnId, said, today));
        if (!import.IsAccepted)
            return ImportOutcome.Refused<ImportCounts>(import.Faults);
        if (import.Station.StationId != ghcnId)
        {
            return ImportOutcome.Refused<ImportCounts>(new(
                [new(1, "station", import.Station.StationId, $"the file of {ghcnId}, or the address of this station")], 0));
        }

        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var before = await stations.UsedAsync(cancellation);
        var station = await db.Stations.SingleAsync(station => station.GhcnId == ghcnId, cancellation);
        var counts = await readings.MergeAsync(station, import.Station.Readings, cancellation);
        await db.SaveChangesAsync(cancellation);
        var moved = await stations.AssignAsync(before, cancellation);
        look.Note(new WeatherChange(counts.Created + counts.Updated > 0 ? [station.Id] : [], [], moved));
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return ImportOutcome.Stored(counts);
    }
}
