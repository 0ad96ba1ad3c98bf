using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Feeds.TimeZones;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Properties;

/// <summary>Creates, changes and deletes properties.</summary>
public sealed class PropertyHandler(
    WorkWindowsDb db, CurrentOrganization organization, StationAssignment stations, PromptLook look)
{
    public async Task<Change<Property>> CreateAsync(PropertyForm form, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var key = faults.Required("key", form.Key, FieldText.IsKey, FieldText.Key);
        var fields = form.Check(faults);
        var parcel = form.Parcel?.Check(faults, "parcel.");
        await CheckLandownerAsync(form.LandownerId, faults, cancellation);
        var zone = fields.TimeZone ?? CountyTimeZone.Find(fields.CountyFips) ?? parcel?.PositionZone;
        if (zone is null && !faults.Any)
            faults.Add("timeZone", null, "an IANA time zone, or a first parcel whose position gives it");
        if (faults.Any)
            return Change.Refused<Property>(faults);

        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.Properties.AnyAsync(other => other.Key == key, cancellation))
            return Change.Conflict<Property>($"A property with the key '{key}' exists already.");
        var property = new Property
        {
            Key = key,
            Name = fields.Name,
            LandownerId = form.LandownerId,
            CountyFips = fields.CountyFips,
            State = fields.State,
            TimeZone = zone!,
            AccessNotes = fields.AccessNotes,
        };
        fields.Emergency?.Enter(property);
        db.Add(property);
        if (parcel is not null)
        {
            if (await db.Parcels.AnyAsync(other => other.Key == parcel.Key, cancellation))
                return Change.Conflict<Property>($"A parcel with the key '{parcel.Key}' exists already.");
            db.Add(parcel.ToParcel(property.Id));
        }
        await db.SaveChangesAsync(cancellation);
        await stations.AssignAsync(cancellation);
        await change.CommitAsync(cancellation);
        return Change.Done(property);
    }

    public async Task<Change<Property>> UpdateAsync(Guid id, PropertyForm form, CancellationToken cancellation)
    {
        if (await db.Properties.SingleOrDefaultAsync(property => property.Id == id, cancellation) is not { } property)
            return Change.NotFound<Property>();
        var faults = new FieldFaults();
        if (form.Key is { } key && key != property.Key)
            faults.Add("key", key, $"'{property.Key}', which stays what it is, or nothing");
        if (form.Parcel is not null)
            faults.Add("parcel", "a parcel", $"nothing: parcels are added at /api/properties/{id}/parcels");
        var fields = form.Check(faults);
        await CheckLandownerAsync(form.LandownerId, faults, cancellation);
        if (faults.Any)
            return Change.Refused<Property>(faults);

        (property.Name, property.CountyFips, property.State) = (fields.Name, fields.CountyFips, fields.State);
        (property.LandownerId, property.AccessNotes) = (form.LandownerId, fields.AccessNotes);
        property.TimeZone = fields.TimeZone ?? property.TimeZone;
        fields.Emergency?.Enter(property);
        look.Note(WeatherChange.OfParcels(await db.Parcels.Where(parcel => parcel.PropertyId == id)
            .Select(parcel => parcel.Id).ToListAsync(cancellation)));
        await db.SaveChangesAsync(cancellation);
        look.Enqueue();
        return Change.Done(property);
    }

    /// <summary>Enters who is called from a property and the way in, and changes nothing else of it.</summary>
    /// <param name="id">The property.</param>
    /// <param name="accessNotes">How to get there and in; null to leave it as it is, empty to take it away.</param>
    /// <param name="form">Who is called.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public async Task<Change<Property>> EnterPlaceAsync(
        Guid id, string? accessNotes, EmergencyForm form, CancellationToken cancellation)
    {
        if (await db.Properties.SingleOrDefaultAsync(property => property.Id == id, cancellation) is not { } property)
            return Change.NotFound<Property>();
        var faults = new FieldFaults();
        var fields = form.Check(faults);
        var notes = PropertyForm.CheckNotes(accessNotes, faults);
        if (faults.Any)
            return Change.Refused<Property>(faults);
        fields.Enter(property);
        if (accessNotes is not null)
            property.AccessNotes = notes;
        await db.SaveChangesAsync(cancellation);
        return Change.Done(property);
    }

    /// <summary>Deletes a property with its parcels and tasks, unless something was decided about one of them.</summary>
    public async Task<Change<Property>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await db.Properties.SingleOrDefaultAsync(property => property.Id == id, cancellation) is not { } property)
            return Change.NotFound<Property>();
        var tasks = db.PlannedTasks.Where(task => task.Parcel.PropertyId == id);
        if (await db.Decisions.AnyAsync(decision => tasks.Any(task => task.Id == decision.TaskId), cancellation))
        {
            return Change.Conflict<Property>(
                $"Decisions about tasks of the property '{property.Key}' are kept for ever, so it must stay.");
        }
        db.Remove(property);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(property);
    }

    private async Task CheckLandownerAsync(Guid? id, FieldFaults faults, CancellationToken cancellation)
    {
        if (id is not null && !await db.People.AnyAsync(person => person.Id == id, cancellation))
            faults.Add("landownerId", id, "the id of a person of the organization");
    }
}
