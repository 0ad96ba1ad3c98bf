using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;
using PlanBooking = WorkWindows.Planning.Cases.Booking;

namespace WorkWindows.Service.Crews;

/// <summary>Puts work on crews' days by hand, as long as that breaks no hard rule.</summary>
public sealed class BookingHandler(
    WorkWindowsDb db, CurrentOrganization organization, PlanReader reader, BookingStore store, WeekHandler week,
    PromptLook look)
{
    /// <summary>No further ahead than chances are told.</summary>
    private const int LongestAheadDays = 366;

    public async Task<Change<Booking>> AddAsync(BookingForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var faults = new FieldFaults();
        if (form.TaskId is not { } id
            || !await db.PlannedTasks.AnyAsync(task => task.Id == id && task.CompletedOn == null, cancellation))
        {
            faults.Add("taskId", form.TaskId, "the id of a task that is not done");
        }
        if (form.Hours is not (null or (> 0 and <= 24)))
            faults.Add("hours", form.Hours, "hours above 0 and up to 24, or nothing for what is left of the task");
        var today = await CheckAsync(form.CrewId, form.Day, faults, cancellation);
        if (faults.Any)
            return Change.Refused<Booking>(faults);
        var wanted = new PlanBooking($"{form.TaskId}", $"{form.CrewId}", form.Day!.Value, (double)(form.Hours ?? 0), int.MaxValue);
        return await SaveAsync(change, wanted, null, today, cancellation);
    }

    public async Task<Change<Booking>> MoveAsync(Guid id, MoveForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(id, cancellation) is not { } booking)
            return Change.NotFound<Booking>();
        var faults = new FieldFaults();
        var today = await CheckAsync(form.CrewId, form.Day, faults, cancellation);
        if (booking.Day < today)
            faults.Add("day", form.Day, "nothing: what was booked for a past day stays");
        if (faults.Any)
            return Change.Refused<Booking>(faults);
        var wanted = new PlanBooking(
            $"{booking.TaskId}", $"{form.CrewId}", form.Day!.Value, (double)booking.Hours, int.MaxValue);
        return await SaveAsync(change, wanted, booking, today, cancellation);
    }

    public async Task<Change<Booking>> RemoveAsync(Guid id, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(id, cancellation) is not { } booking)
            return Change.NotFound<Booking>();
        var today = await week.TodayAsync(cancellation);
        if (booking.Day < today)
            return Change.Conflict<Booking>("What was booked for a past day stays.");
        db.Remove(booking);
        await db.SaveChangesAsync(cancellation);
        await store.TellTasksAsync([booking.TaskId], today, cancellation);
        await LookAtAsync(booking.TaskId, cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(booking);
    }

    private Task<Booking?> FindAsync(Guid id, CancellationToken cancellation) =>
        db.Bookings.SingleOrDefaultAsync(row => row.Id == id, cancellation);

    private async Task<LocalDate> CheckAsync(
        Guid? crewId, LocalDate? day, FieldFaults faults, CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        if (crewId is not { } crew || !await db.Crews.AnyAsync(row => row.Id == crew, cancellation))
            faults.Add("crewId", crewId, "the id of a crew");
        if (day is null || day < today || day > today.PlusDays(LongestAheadDays))
            faults.Add("day", day, $"a day from {today:R} to {today.PlusDays(LongestAheadDays):R}");
        return today;
    }

    /// <summary>Stores a booking in place of another where no rule is broken that was not broken before.</summary>
    private async Task<Change<Booking>> SaveAsync(
        OrganizationChange change, PlanBooking wanted, Booking? former, LocalDate today, CancellationToken cancellation)
    {
        var last = await db.Bookings.MaxAsync(row => (LocalDate?)row.Day, cancellation) ?? wanted.Day;
        var input = await reader.ReadAsync(DaySpan.Between(today, LocalDate.Max(last, wanted.Day)), cancellation);
        PlanBooking[] before = [.. input.Case.Fixed, .. input.Case.Announced];
        var others = former is null ? before : [.. before.Where(one => !IsOf(one, former))];
        if (others.Any(one => one.TaskId == wanted.TaskId && one.Day == wanted.Day))
            return Change.Conflict<Booking>($"This work is booked on {Windows.DayWords.Of(wanted.Day)} already.");
        var made = Whole(input, wanted, former, others);
        if (made.Hours <= 0)
            return Change.Conflict<Booking>("All hours of this work are booked already, or the crew's day is full.");
        var ordered = CrewTours.Ordered(input.Case, EquipmentHandout.Of(
            input.Case with { Fixed = [.. input.Case.Fixed.Where(one => former is null || !IsOf(one, former))] }, [.. others, made]));
        var broken = PlanCheck.Broken(input.Case, ordered).Except(PlanCheck.Broken(input.Case, before)).ToList();
        if (broken.Count > 0)
        {
            var names = await db.NamesAsync(cancellation);
            var says = broken.Select(one => PlanWords.Of(one, input, names)).Distinct().ToArray();
            return Change.Conflict<Booking>(string.Join(" ", says), ("conflicts", says));
        }
        if (former is not null)
        {
            db.Remove(former);
            await db.SaveChangesAsync(cancellation);
        }
        var stored = store.Add(ordered.Single(one => one.TaskId == made.TaskId && one.Day == made.Day), isFixed: true);
        await PlaceAsync(ordered, cancellation);
        await db.SaveChangesAsync(cancellation);
        await store.TellTasksAsync([stored.TaskId], today, cancellation);
        await LookAtAsync(stored.TaskId, cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(stored);
    }

    /// <summary>Whoever is booked now, or not any more, is told while there is time.</summary>
    private async Task LookAtAsync(Guid taskId, CancellationToken cancellation)
    {
        look.Note(WeatherChange.OfParcels(
            await db.PlannedTasks.Where(task => task.Id == taskId).Select(task => task.ParcelId).ToListAsync(cancellation)));
        await db.SaveChangesAsync(cancellation);
    }

    private static bool IsOf(PlanBooking one, Booking booking) =>
        one.Day == booking.Day && one.TaskId == $"{booking.TaskId}" && one.CrewId == $"{booking.CrewId}";

    /// <summary>
    /// With everybody of the crew who is there, and what is left of the work where no hours were given. What is moved to
    /// another crew takes the hours that this crew needs for it.
    /// </summary>
    private static PlanBooking Whole(
        PlanInput input, PlanBooking wanted, Booking? former, IEnumerable<PlanBooking> others)
    {
        var task = input.Case.Tasks.First(one => one.Id == wanted.TaskId);
        var crew = input.Case.Crews.First(one => one.Id == wanted.CrewId);
        var moved = former is null
            ? 1
            : crew.PaceAt(task) / input.Case.Crews.First(one => one.Id == $"{former.CrewId}").PaceAt(task);
        var left = TaskProgress.Left(input.Case, task, crew, others.Where(one => one.TaskId == task.Id));
        var beside = others.Where(one => one.CrewId == crew.Id && one.Day == wanted.Day).ToList();
        return wanted with
        {
            Hours = wanted.Hours > 0 ? wanted.Hours * moved : Math.Min(left, CrewDay.HoursLeft(input.Case, task, crew, beside)),
            Members = [.. crew.Present(wanted.Day).Select(member => member.Id)],
        };
    }

    /// <summary>The order of a crew's day may be another with one task more.</summary>
    private async Task PlaceAsync(IReadOnlyCollection<PlanBooking> ordered, CancellationToken cancellation)
    {
        var places = ordered.ToDictionary(one => (Guid.Parse(one.TaskId), one.Day), one => one.Place);
        var days = ordered.Select(one => one.Day).ToHashSet();
        foreach (var row in await db.Bookings.Where(row => days.Contains(row.Day)).ToListAsync(cancellation))
            row.Place = places.GetValueOrDefault((row.TaskId, row.Day), row.Place);
    }
}
