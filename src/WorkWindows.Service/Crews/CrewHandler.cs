using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Creates, changes and deletes crews.</summary>
public sealed class CrewHandler(WorkWindowsDb db, CurrentOrganization organization)
{
    /// <param name="id">The crew to change; null for a new one.</param>
    /// <param name="form">As it is wanted.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Change<Crew>> SaveAsync(Guid? id, CrewForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var crew = id is null ? null : await db.Crews.Include(row => row.Members)
            .SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (id is not null && crew is null)
            return Change.NotFound<Crew>();
        var faults = new FieldFaults();
        var name = form.Check(faults);
        await CheckPeopleAsync(form, faults, cancellation);
        if (faults.Any)
            return Change.Refused<Crew>(faults);
        if (await db.Crews.AnyAsync(other => other.Name == name && other.Id != id, cancellation))
            return Change.Conflict<Crew>($"A crew '{name}' exists already.");
        if (crew is null)
            db.Add(crew = new() { Name = name, LeadId = form.LeadId!.Value, HoursPerDay = form.Hours });
        (crew.Name, crew.LeadId, crew.HoursPerDay) = (name, form.LeadId!.Value, form.Hours);
        (crew.BaseLatitude, crew.BaseLongitude) = (form.BaseLatitude, form.BaseLongitude);
        (crew.FirstDay, crew.LastDay) = (form.FirstDay, form.LastDay);
        crew.Consist(form.People);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        return Change.Done(crew);
    }

    public async Task<Change<Crew>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await db.Crews.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } crew)
            return Change.NotFound<Crew>();
        if (await db.Bookings.AnyAsync(booking => booking.CrewId == id, cancellation)
            || await db.WorkRecords.AnyAsync(record => record.CrewId == id, cancellation))
        {
            return Change.Conflict<Crew>(
                $"'{crew.Name}' has work booked or recorded, which is kept; give it a last day instead.");
        }
        if (await db.Equipment.AnyAsync(piece => piece.CrewId == id, cancellation))
            return Change.Conflict<Crew>($"'{crew.Name}' has equipment of its own; give it to another crew or to all first.");
        db.Remove(crew);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(crew);
    }

    private async Task CheckPeopleAsync(CrewForm form, FieldFaults faults, CancellationToken cancellation)
    {
        var people = await db.People.Where(person => form.People.Contains(person.Id))
            .ToDictionaryAsync(person => person.Id, person => person.Role, cancellation);
        if (form.LeadId is { } lead && people.GetValueOrDefault(lead, Role.Landowner) is not (Role.CrewLead or Role.Consultant))
            faults.Add("leadId", lead, "the id of a crew lead or consultant of the organization");
        foreach (var stranger in form.People.Where(id => people.GetValueOrDefault(id, Role.Landowner) == Role.Landowner))
        {
            if (stranger != form.LeadId)
                faults.Add("memberIds", stranger, "ids of people of the organization who are not landowners");
        }
    }
}
