using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Writes bookings, and what tasks say of their first day and their lead. The caller saves.</summary>
public sealed class BookingStore(WorkWindowsDb db)
{
    /// <summary>Adds a booking as the planner has it.</summary>
    public Booking Add(Planning.Cases.Booking from, bool isFixed)
    {
        var booking = new Booking
        {
            TaskId = Guid.Parse(from.TaskId),
            CrewId = Guid.Parse(from.CrewId),
            Day = from.Day,
            Hours = Math.Round((decimal)from.Hours, 2),
            Place = from.Place,
            IsFixed = isFixed,
        };
        foreach (var person in from.Members.Select(Guid.Parse))
        {
            booking.People.Add(new()
            {
                BookingId = booking.Id,
                PersonId = person,
                CrewId = booking.CrewId,
                Day = booking.Day,
            });
        }
        foreach (var piece in from.EquipmentIds.Select(Guid.Parse))
        {
            booking.Equipment.Add(new()
            {
                BookingId = booking.Id,
                EquipmentId = piece,
                CrewId = booking.CrewId,
                Day = booking.Day,
            });
        }
        db.Add(booking);
        return booking;
    }

    /// <summary>Takes work that is finished off the days after its last one: its crew is free for other work.</summary>
    public async Task FreeAsync(Guid taskId, LocalDate lastDay, CancellationToken cancellation) => db.RemoveRange(
        await db.Bookings.Where(row => row.TaskId == taskId && row.Day > lastDay).ToListAsync(cancellation));

    /// <summary>
    /// Says on the tasks which day is the next and who leads, so that notices, calendars and checklists are of it. To be
    /// called once their bookings are saved.
    /// </summary>
    public async Task TellTasksAsync(IReadOnlyCollection<Guid> tasks, LocalDate today, CancellationToken cancellation)
    {
        var next = (await db.Bookings.Where(booking => tasks.Contains(booking.TaskId) && booking.Day >= today)
                .OrderBy(booking => booking.Day).Select(booking => new { booking.TaskId, booking.Day, booking.Crew.LeadId })
                .ToListAsync(cancellation))
            .GroupBy(row => row.TaskId).ToDictionary(rows => rows.Key, rows => rows.First());
        foreach (var task in await db.PlannedTasks.Where(task => tasks.Contains(task.Id)).ToListAsync(cancellation))
        {
            task.ScheduledOn = next.GetValueOrDefault(task.Id)?.Day;
            if (next.GetValueOrDefault(task.Id) is { } first)
                task.CrewLeadId = first.LeadId;
        }
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>The same where the day that a task speaks of is over, and another is booked.</summary>
    public async Task TurnDayAsync(LocalDate today, CancellationToken cancellation) => await TellTasksAsync(
        await db.PlannedTasks
            .Where(task => task.CompletedOn == null && task.ScheduledOn < today
                && db.Bookings.Any(booking => booking.TaskId == task.Id && booking.Day >= today))
            .Select(task => task.Id).ToListAsync(cancellation),
        today, cancellation);
}
