using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Imports;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Properties;

/// <summary>What an import of parcels did.</summary>
public sealed record ParcelImportCounts(ImportCounts Properties, ImportCounts Parcels);

/// <summary>Stores a file of parcels: all of it or nothing, and the same file again changes nothing.</summary>
public sealed class ParcelImportHandler(
    WorkWindowsDb db, CurrentOrganization organization, LandownerNames landowners, StationAssignment stations,
    PromptLook look)
{
    /// <param name="file">GeoJSON as docs/files.md describes it.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public Task<ImportOutcome<ParcelImportCounts>> ImportAsync(Stream file, CancellationToken cancellation) =>
        ReadAsync(file, isPreview: false, cancellation);

    /// <summary>Says what an import would do, and stores nothing.</summary>
    /// <inheritdoc cref="ImportAsync"/>
    public Task<ImportOutcome<ParcelImportCounts>> PreviewAsync(Stream file, CancellationToken cancellation) =>
        ReadAsync(file, isPreview: true, cancellation);

    private async Task<ImportOutcome<ParcelImportCounts>> ReadAsync(
        Stream file, bool isPreview, CancellationToken cancellation)
    {
        var import = ParcelFile.Read(file);
        if (!import.IsAccepted)
            return ImportOutcome.Refused<ParcelImportCounts>(import.Faults);

        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var rows = import.Rows.GroupBy(row => row.Property).ToList();
        var keys = rows.Select(row => row.Key).ToList();
        var properties = await db.Properties.Where(property => keys.Contains(property.Key))
            .ToDictionaryAsync(property => property.Key, cancellation);
        var parcelKeys = import.Rows.Select(row => row.Parcel).ToList();
        var parcels = await db.Parcels.Include(parcel => parcel.Property)
            .Where(parcel => parcelKeys.Contains(parcel.Key)).ToDictionaryAsync(parcel => parcel.Key, cancellation);
        var faults = Faults(import.Rows, parcels);
        if (!faults.IsEmpty)
            return ImportOutcome.Refused<ParcelImportCounts>(faults);

        await landowners.LoadAsync(import.Rows, cancellation);
        foreach (var property in rows)
        {
            if (!properties.TryGetValue(property.Key, out var stored))
                properties[property.Key] = stored = Add(property.First());
            Apply([.. property], stored);
            foreach (var row in property)
            {
                if (!parcels.TryGetValue(row.Parcel, out var parcel))
                    parcels[row.Parcel] = parcel = Add(row, stored);
                Apply(row, parcel);
            }
        }
        var counts = new ParcelImportCounts(Count(properties.Values), Count(parcels.Values));
        if (isPreview)
            return ImportOutcome.Stored(counts) with { Changes = ImportPreview.Of(db) };
        if (counts.Parcels.Created + counts.Parcels.Updated + counts.Properties.Updated > 0)
            look.Note(WeatherChange.OfParcels([.. parcels.Values.Select(parcel => parcel.Id)]));
        await db.SaveChangesAsync(cancellation);
        await stations.AssignAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return ImportOutcome.Stored(counts);
    }

    /// <summary>
    /// What the file itself cannot know: a property lies in one county, and a parcel stays with its property.
    /// </summary>
    private static FaultReport Faults(IEnumerable<ParcelRow> rows, Dictionary<string, Parcel> parcels)
    {
        var faults = new List<InputFault>();
        foreach (var property in rows.GroupBy(row => row.Property))
        {
            var first = property.First();
            foreach (var row in property)
            {
                if (row.CountyFips != first.CountyFips)
                {
                    faults.Add(new(row.Line, "countyFips", row.CountyFips,
                        $"{first.CountyFips}, as property {row.Property} has it on line {first.Line}", row.Parcel));
                }
                if (parcels.GetValueOrDefault(row.Parcel) is { } parcel && parcel.Property.Key != row.Property)
                {
                    faults.Add(new(row.Line, "property", row.Property,
                        $"{parcel.Property.Key}, whose parcel it is, or another parcel key", row.Parcel));
                }
            }
        }
        return new([.. faults.Take(FaultReport.Limit)], Math.Max(0, faults.Count - FaultReport.Limit));
    }

    private Property Add(ParcelRow row)
    {
        var property = new Property
        {
            Key = row.Property,
            Name = row.Property,
            CountyFips = row.CountyFips,
            State = row.State,
            TimeZone = row.TimeZone,
        };
        db.Add(property);
        return property;
    }

    private Parcel Add(ParcelRow row, Property property)
    {
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = row.Parcel,
            Name = row.Parcel,
            Latitude = row.Site.LatitudeDeg,
            Longitude = row.Site.LongitudeDeg,
        };
        db.Add(parcel);
        return parcel;
    }

    /// <summary>A property takes what any of its rows says; what none says stays as it is stored.</summary>
    private void Apply(ParcelRow[] rows, Property property)
    {
        property.Name = rows.Select(row => row.PropertyName).FirstOrDefault(name => name is not null) ?? property.Name;
        (property.CountyFips, property.State) = (rows[0].CountyFips, rows[0].State);
        property.TimeZone = Array.Find(rows, row => row.IsTimeZoneGiven)?.TimeZone ?? property.TimeZone;
        property.LandownerId = landowners.Find(rows)?.Id ?? property.LandownerId;
    }

    /// <summary>An inventory, flags or an elevation that the file does not speak of stay as they are stored.</summary>
    private static void Apply(ParcelRow row, Parcel parcel)
    {
        parcel.Name = row.ParcelName ?? parcel.Name;
        parcel.Place(row.Site);
        parcel.ElevationM = row.ElevationM ?? parcel.ElevationM;
        if (!row.Stand.IsEmpty)
            parcel.Stand = [.. row.Stand.Select(StandRow.Of)];
        if (row.Flags is { } flags)
            parcel.SiteFlags = [.. flags];
    }

    private ImportCounts Count<T>(IEnumerable<T> rows) where T : class =>
        ImportCounts.Of([.. rows.Select(row => db.Entry(row).State)]);
}
