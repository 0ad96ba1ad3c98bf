using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Stores a file of drive times in place of those before it: all of it or nothing.</summary>
public sealed class DriveTimeHandler(WorkWindowsDb db, CurrentOrganization organization)
{
    /// <param name="file">CSV as docs/files.md describes it.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public async Task<ImportOutcome<ImportCounts>> ImportAsync(Stream file, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var places = await db.Properties.Select(row => new { Name = row.Key, row.Id })
            .Concat(db.Crews.Where(row => row.BaseLatitude != null).Select(row => new { row.Name, row.Id }))
            .ToListAsync(cancellation);
        // A crew may be called what a property is called: the property's key counts.
        var ids = places.GroupBy(place => place.Name).ToDictionary(same => same.Key, same => same.First().Id);
        var import = DriveTimeFile.Read(file, ids.Keys.ToHashSet());
        if (!import.Faults.Faults.IsEmpty)
            return ImportOutcome.Refused<ImportCounts>(import.Faults);
        var stored = await db.DriveTimes.ToDictionaryAsync(row => (row.FromId, row.ToId), cancellation);
        var kept = new List<DriveTime>();
        foreach (var row in import.Rows)
        {
            var (from, to) = (ids[row.From], ids[row.To]);
            if (!stored.Remove((from, to), out var drive))
                db.Add(drive = new() { FromId = from, ToId = to, Minutes = row.Minutes });
            drive.Minutes = row.Minutes;
            kept.Add(drive);
        }
        db.RemoveRange(stored.Values);
        var counts = ImportCounts.Of([.. kept.Select(drive => db.Entry(drive).State)]);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        return ImportOutcome.Stored(counts);
    }
}
