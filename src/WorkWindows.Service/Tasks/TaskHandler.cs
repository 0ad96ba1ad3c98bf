using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tasks;

/// <summary>Creates, changes, completes and deletes planned tasks.</summary>
public sealed class TaskHandler(
    WorkWindowsDb db, CurrentOrganization organization, PlannedCompany company, FollowUpDates followUps,
    BookingStore bookings, PromptLook look, IClock clock)
{
    public async Task<Change<PlannedTask>> CreateAsync(TaskForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var faults = new FieldFaults();
        var key = faults.Required("key", form.Key, FieldText.IsKey, FieldText.Key);
        var fields = form.Check(faults);
        await CheckReferencesAsync(form, fields, faults, cancellation);
        if (faults.Any)
            return Change.Refused<PlannedTask>(faults);
        if (await db.PlannedTasks.AnyAsync(other => other.Key == key, cancellation))
            return Change.Conflict<PlannedTask>($"A task with the key '{key}' exists already.");

        var task = new PlannedTask
        {
            Key = key,
            ParcelId = form.ParcelId!.Value,
            PracticeId = fields.Practice,
            CrewSize = fields.CrewSize,
        };
        db.Add(task);
        Apply(form, fields, task);
        look.Note(WeatherChange.OfParcels([task.ParcelId]));
        await db.SaveChangesAsync(cancellation);
        // Nothing stays stored of what is not committed.
        if ((await company.ForbiddenAsync([task.Id], cancellation)).TryGetValue(task.Id, out var law))
            return CompanyRules.Refuse<PlannedTask>(law, "crewSize");
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(task);
    }

    public async Task<Change<PlannedTask>> UpdateAsync(Guid id, TaskForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(id, cancellation) is not { } task)
            return Change.NotFound<PlannedTask>();
        var faults = new FieldFaults();
        if (form.Key is { } key && key != task.Key)
            faults.Add("key", key, $"'{task.Key}', which stays what it is, or nothing");
        var fields = form.Check(faults);
        await CheckReferencesAsync(form, fields, faults, cancellation);
        await CheckOrderAsync(task, fields.PrerequisiteIds, faults, cancellation);
        if (form.FollowsId == id)
            faults.Add("followsId", id, "another task, or nothing");
        if (faults.Any)
            return Change.Refused<PlannedTask>(faults);

        Apply(form, fields, task);
        look.Note(WeatherChange.OfParcels([task.ParcelId]));
        await db.SaveChangesAsync(cancellation);
        // Nothing stays stored of what is not committed.
        if ((await company.ForbiddenAsync([task.Id], cancellation)).TryGetValue(task.Id, out var law))
            return CompanyRules.Refuse<PlannedTask>(law, "crewSize");
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(task);
    }

    /// <summary>Says on which day a task was done; null takes it back.</summary>
    public async Task<Change<PlannedTask>> CompleteAsync(
        Guid id, LocalDate? completedOn, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(id, cancellation) is not { } task)
            return Change.NotFound<PlannedTask>();
        var zone = await db.Parcels.Where(parcel => parcel.Id == task.ParcelId)
            .Select(parcel => parcel.Property.TimeZone).SingleAsync(cancellation);
        if (completedOn > clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date)
        {
            var faults = new FieldFaults();
            faults.Add("completedOn", completedOn, "a day that is not to come yet");
            return Change.Refused<PlannedTask>(faults);
        }
        task.CompletedOn = completedOn;
        await followUps.SetAsync(task, cancellation);
        if (completedOn is { } lastDay)
            await bookings.FreeAsync(task.Id, lastDay, cancellation);
        look.Note(WeatherChange.OfParcels([task.ParcelId]));
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(task);
    }

    public async Task<Change<PlannedTask>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } task)
            return Change.NotFound<PlannedTask>();
        if (await db.Decisions.AnyAsync(decision => decision.TaskId == id, cancellation))
        {
            return Change.Conflict<PlannedTask>(
                $"Decisions about the task '{task.Key}' are kept for ever, so it must stay; complete it instead.");
        }
        if (await db.CrewWatches.AnyAsync(watch => watch.TaskId == id, cancellation)
            || await db.Incidents.AnyAsync(incident => incident.TaskId == id, cancellation)
            || await db.WorkRecords.AnyAsync(record => record.TaskId == id, cancellation))
        {
            return Change.Conflict<PlannedTask>(
                $"Watches, incidents and records of work of the task '{task.Key}' are kept for ever, so it must stay; complete it instead.");
        }
        db.Remove(task);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(task);
    }

    private Task<PlannedTask?> FindAsync(Guid id, CancellationToken cancellation) => db.PlannedTasks
        .Include(task => task.Prerequisites).SingleOrDefaultAsync(task => task.Id == id, cancellation);

    private async Task CheckReferencesAsync(
        TaskForm form, TaskFields fields, FieldFaults faults, CancellationToken cancellation)
    {
        if (form.ParcelId is not { } parcel || !await db.Parcels.AnyAsync(row => row.Id == parcel, cancellation))
            faults.Add("parcelId", form.ParcelId, "the id of a parcel that exists");
        if (form.CrewLeadId is { } lead && !await db.People.AnyAsync(
            person => person.Id == lead && (person.Role == Role.CrewLead || person.Role == Role.Consultant), cancellation))
        {
            faults.Add("crewLeadId", lead, "the id of a crew lead or consultant of the organization");
        }
        if (form.FollowsId is { } first
            && !await db.PlannedTasks.AnyAsync(task => task.Id == first && task.ParcelId == form.ParcelId, cancellation))
        {
            faults.Add("followsId", first, "the id of a task on the same parcel, or nothing");
        }
        var known = await db.PlannedTasks.Where(task => fields.PrerequisiteIds.Contains(task.Id))
            .Select(task => task.Id).ToListAsync(cancellation);
        foreach (var unknown in fields.PrerequisiteIds.Except(known))
            faults.Add("prerequisiteIds", unknown, "ids of tasks that exist");
    }

    private async Task CheckOrderAsync(
        PlannedTask task, IReadOnlyList<Guid> prerequisites, FieldFaults faults, CancellationToken cancellation)
    {
        var others = await db.TaskPrerequisites.AsNoTracking().Where(link => link.TaskId != task.Id)
            .Select(link => new { link.TaskId, link.PrerequisiteId }).ToListAsync(cancellation);
        var order = others.Select(link => (link.TaskId, link.PrerequisiteId))
            .Concat(prerequisites.Select(earlier => (task.Id, earlier)))
            .ToLookup(link => link.Item1, link => link.Item2);
        if (PrerequisiteOrder.CircleThrough(order, task.Id) is not { } circle)
            return;
        var keys = await db.PlannedTasks.Where(row => circle.Contains(row.Id))
            .ToDictionaryAsync(row => row.Id, row => row.Key, cancellation);
        faults.Add("prerequisiteIds", string.Join(" after ", circle.Select(id => keys[id])),
            "prerequisites that do not lead back to the task itself");
    }

    private static void Apply(TaskForm form, TaskFields fields, PlannedTask task)
    {
        (task.ParcelId, task.PracticeId) = (form.ParcelId!.Value, fields.Practice);
        (task.Quantity, task.QuantityUnit) = (form.Quantity, fields.QuantityUnit);
        (task.CrewSize, task.CrewLeadId) = (fields.CrewSize, form.CrewLeadId);
        (task.Deadline, task.ScheduledOn) = (form.Deadline, form.ScheduledOn);
        (task.NotBefore, task.FollowsId, task.Points) = (form.NotBefore, form.FollowsId, form.Points);
        (task.HoursLow, task.HoursHigh) = (form.HoursLow, form.HoursHigh);
        task.ComeAfter(fields.PrerequisiteIds);
    }
}
