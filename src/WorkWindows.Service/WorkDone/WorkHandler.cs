using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.WorkDone;

/// <summary>Records what was done; handed in twice it is stored once.</summary>
public sealed class WorkHandler(
    WorkWindowsDb db, CurrentOrganization organization, VisibleTasks visible, LeafOutHandler leafOuts,
    FollowUpDates followUps, BookingStore bookings, IClock clock)
{
    /// <param name="taskId">The task.</param>
    /// <param name="form">What was done.</param>
    /// <param name="photos">Photos of it.</param>
    /// <param name="by">Who says so.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public async Task<Change<WorkRecord>> RecordAsync(
        Guid taskId, WorkForm form, IReadOnlyList<PhotoFile> photos, Signer by, CancellationToken cancellation)
    {
        if (await visible.All.Where(task => task.Id == taskId).Include(task => task.Parcel).ThenInclude(parcel => parcel.Property)
            .SingleOrDefaultAsync(cancellation) is not { } task)
        {
            return Change.NotFound<WorkRecord>();
        }
        var now = clock.GetCurrentInstant();
        var faults = new FieldFaults();
        var problem = form.Check(now.InZone(DateTimeZoneProviders.Tzdb[task.Parcel.Property.TimeZone]).Date, faults);
        CheckPhotos(photos, faults);
        if (faults.Any)
            return Change.Refused<WorkRecord>(faults);
        if (await db.WorkRecords.SingleOrDefaultAsync(row => row.Id == form.Id, cancellation) is { } known)
        {
            return known.TaskId == taskId
                ? Change.Done(known)
                : Change.Conflict<WorkRecord>("A record with this id is of another task.");
        }
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var before = await db.WorkRecords.Where(row => row.TaskId == taskId).SumAsync(row => row.PersonHours, cancellation);
        if (before + form.People!.Value * form.Hours!.Value < 0)
        {
            faults.Add("hours", form.Hours, $"no more taken back than the {before:0.##} hours of one person that were recorded");
            return Change.Refused<WorkRecord>(faults);
        }
        var record = await AddAsync(task, form, problem, by, now, cancellation);
        foreach (var photo in photos)
        {
            record.Photos.Add(new()
            {
                Id = Guid.CreateVersion7(),
                RecordId = record.Id,
                ContentType = photo.ContentType!,
                Bytes = photo.Bytes,
            });
        }
        if (record.IsLast)
        {
            // A record that comes late does not make the work end before its last day.
            task.CompletedOn = task.CompletedOn > record.Day ? task.CompletedOn : record.Day;
            await followUps.SetAsync(task, cancellation);
            await bookings.FreeAsync(task.Id, task.CompletedOn!.Value, cancellation);
        }
        await db.SaveChangesAsync(cancellation);
        if (form.LeafOutSeen == true)
            await SeeLeafOutAsync(task, record, by, cancellation);
        await change.CommitAsync(cancellation);
        return Change.Done(record);
    }

    /// <returns>The crew that is booked, else the only one of the task's lead.</returns>
    private async Task<Guid?> CrewOfAsync(PlannedTask task, LocalDate day, CancellationToken cancellation)
    {
        var booked = await db.Bookings.Where(row => row.TaskId == task.Id && row.Day == day).Select(row => (Guid?)row.CrewId)
            .SingleOrDefaultAsync(cancellation);
        if (booked is not null || task.CrewLeadId is not { } lead)
            return booked;
        var led = await db.Crews.Where(crew => crew.LeadId == lead).Select(crew => crew.Id).Take(2).ToListAsync(cancellation);
        return led.Count == 1 ? led[0] : null;
    }

    private async Task<WorkRecord> AddAsync(
        PlannedTask task, WorkForm form, string? problem, Signer by, Instant now, CancellationToken cancellation)
    {
        var day = form.Day!.Value;
        var record = new WorkRecord
        {
            Id = form.Id!.Value,
            TaskId = task.Id,
            Day = day,
            CrewId = await CrewOfAsync(task, day, cancellation),
            People = form.People!.Value,
            PersonHours = form.People.Value * form.Hours!.Value,
            Quantity = form.Quantity,
            Stems = form.Stems,
            Problem = problem,
            IsLast = form.IsLast == true,
            RecordedAt = now,
            RecordedById = by.PersonId,
            RecordedBy = by.Name,
        };
        db.Add(record);
        return record;
    }

    /// <summary>An earlier day that somebody saw already stays: leaf-out is the first day.</summary>
    private async Task SeeLeafOutAsync(PlannedTask task, WorkRecord record, Signer by, CancellationToken cancellation)
    {
        var property = task.Parcel.PropertyId;
        if (await db.SiteObservations.AnyAsync(seen => seen.PropertyId == property && seen.Kind == SiteObservation.LeafOut
            && seen.ObservedOn.Year == record.Day.Year && seen.ObservedOn <= record.Day, cancellation))
        {
            return;
        }
        await leafOuts.PutAsync(
            property, record.Day.Year, record.Day, $"Seen at work by {by.Name}.", by.PersonId, cancellation);
    }

    private static void CheckPhotos(IReadOnlyList<PhotoFile> photos, FieldFaults faults)
    {
        if (photos.Count > PhotoFile.Most)
            faults.Add("photos", photos.Count, $"at most {PhotoFile.Most} photos");
        foreach (var photo in photos)
        {
            if (photo.Bytes.Length > PhotoFile.MostBytes)
                faults.AddSentence("photos", "A photo is larger than 5 MB: give a smaller one.");
            else if (photo.ContentType is null)
                faults.AddSentence("photos", "A file is no photo: give JPEG, PNG or WebP.");
        }
    }
}
