using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Demo;

/// <summary>Two invented crews, what they have, and the work that they are booked for.</summary>
internal sealed class DemoCrews(WorkWindowsDb db)
{
    private const int BookedHours = 6;

    /// <param name="today">The day of loading.</param>
    /// <param name="booked">Tasks that are booked for the first crew, and on which day.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task AddAsync(LocalDate today, IReadOnlyDictionary<PlannedTask, LocalDate> booked, CancellationToken cancellation)
    {
        var people = await db.People.ToDictionaryAsync(person => person.Email!, person => person.Id, cancellation);
        var (jonas, ines) = (people["jonas.reed@example.org"], people["ines.calder@example.org"]);
        var (tove, abel) = (people["tove.lind@example.org"], people["abel.quist@example.org"]);
        var north = new Crew
        {
            Name = "North crew",
            LeadId = jonas,
            HoursPerDay = 8,
            BaseLatitude = 42.74,
            BaseLongitude = -84.48,
        };
        north.Consist([jonas, ines]);
        var river = new Crew { Name = "River crew", LeadId = tove, HoursPerDay = 7, FirstDay = today.PlusDays(3) };
        river.Consist([tove, abel]);
        db.AddRange(north, river);
        db.Add(new Equipment { Name = "Winch 1", Kind = "rope winch", CrewId = north.Id });
        db.Add(new Equipment { Name = "Planting bars", Kind = "planting bars" });
        db.Add(new Absence
        {
            PersonId = ines,
            FirstDay = today.PlusDays(9),
            LastDay = today.PlusDays(11),
            Reason = "away",
        });
        db.Add(new PersonCertificate { PersonId = jonas, Title = "First aid and CPR", ValidUntil = today.PlusDays(200) });
        db.Add(new PersonCertificate { PersonId = tove, Title = "First aid and CPR", ValidUntil = today.PlusDays(45) });
        foreach (var (task, day) in booked)
        {
            var booking = new Booking
            {
                TaskId = task.Id,
                CrewId = north.Id,
                Day = day,
                Hours = BookedHours,
                Place = 0,
                IsFixed = true,
            };
            foreach (var person in new[] { jonas, ines })
                booking.People.Add(new() { BookingId = booking.Id, PersonId = person, CrewId = north.Id, Day = day });
            db.Add(booking);
        }
        await db.SaveChangesAsync(cancellation);
    }
}
