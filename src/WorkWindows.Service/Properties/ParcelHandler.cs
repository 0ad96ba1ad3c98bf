using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Properties;

/// <summary>Creates, changes and deletes parcels.</summary>
public sealed class ParcelHandler(
    WorkWindowsDb db, CurrentOrganization organization, StationAssignment stations, PromptLook look)
{
    public async Task<Change<Parcel>> CreateAsync(Guid propertyId, ParcelForm form, CancellationToken cancellation)
    {
        if (!await db.Properties.AnyAsync(property => property.Id == propertyId, cancellation))
            return Change.NotFound<Parcel>();
        var faults = new FieldFaults();
        var fields = form.Check(faults);
        if (faults.Any)
            return Change.Refused<Parcel>(faults);

        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.Parcels.AnyAsync(other => other.Key == fields.Key, cancellation))
            return Change.Conflict<Parcel>($"A parcel with the key '{fields.Key}' exists already.");
        var parcel = fields.ToParcel(propertyId);
        db.Add(parcel);
        await SaveAsync(change, cancellation);
        return Change.Done(parcel);
    }

    public async Task<Change<Parcel>> UpdateAsync(Guid id, ParcelForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(id, cancellation) is not { } parcel)
            return Change.NotFound<Parcel>();
        var faults = new FieldFaults();
        var fields = form.Check(faults, key: parcel.Key);
        if (faults.Any)
            return Change.Refused<Parcel>(faults);
        fields.Apply(parcel);
        look.Note(WeatherChange.OfParcels([id]));
        await SaveAsync(change, cancellation);
        look.Enqueue();
        return Change.Done(parcel);
    }

    /// <summary>Replaces the inventory; null says that none has been taken.</summary>
    public async Task<Change<Parcel>> PutStandAsync(
        Guid id, IReadOnlyList<StandRowForm>? stand, CancellationToken cancellation)
    {
        var parts = ParcelParts.Read(JsonSerializer.SerializeToElement(new { stand }, JsonSerializerOptions.Web));
        return await PutAsync(id, parts, parcel =>
            parcel.Stand = stand is null ? null : [.. parts.Stand.Select(StandRow.Of)], cancellation);
    }

    /// <summary>Replaces the site flags.</summary>
    public async Task<Change<Parcel>> PutFlagsAsync(
        Guid id, IReadOnlyList<string>? flags, CancellationToken cancellation)
    {
        var parts = ParcelParts.Read(
            JsonSerializer.SerializeToElement(new { flags = flags ?? [] }, JsonSerializerOptions.Web));
        return await PutAsync(id, parts, parcel => parcel.SiteFlags = [.. parts.Flags!], cancellation);
    }

    /// <summary>Deletes a parcel with its tasks, unless something was decided about one of them.</summary>
    public async Task<Change<Parcel>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } parcel)
            return Change.NotFound<Parcel>();
        var tasks = db.PlannedTasks.Where(task => task.ParcelId == id);
        if (await db.Decisions.AnyAsync(decision => tasks.Any(task => task.Id == decision.TaskId), cancellation))
        {
            return Change.Conflict<Parcel>(
                $"Decisions about tasks of the parcel '{parcel.Key}' are kept for ever, so it must stay.");
        }
        db.Remove(parcel);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(parcel);
    }

    private async Task<Change<Parcel>> PutAsync(
        Guid id, ParcelParts parts, Action<Parcel> put, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } parcel)
            return Change.NotFound<Parcel>();
        if (!parts.Faults.IsEmpty)
        {
            var faults = new FieldFaults();
            faults.Add(parts.Faults);
            return Change.Refused<Parcel>(faults);
        }
        put(parcel);
        look.Note(WeatherChange.OfParcels([id]));
        await db.SaveChangesAsync(cancellation);
        look.Enqueue();
        return Change.Done(parcel);
    }

    private Task<Parcel?> FindAsync(Guid id, CancellationToken cancellation) =>
        db.Parcels.SingleOrDefaultAsync(parcel => parcel.Id == id, cancellation);

    private async Task SaveAsync(OrganizationChange change, CancellationToken cancellation)
    {
        await db.SaveChangesAsync(cancellation);
        await stations.AssignAsync(cancellation);
        await change.CommitAsync(cancellation);
    }
}
