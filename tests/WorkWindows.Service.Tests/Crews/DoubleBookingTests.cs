using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Crews;

/// <summary>What the database itself refuses, whatever the program asks for.</summary>
public sealed class DoubleBookingTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly LocalDate Day = new(2027, 2, 10);

    [Theory]
    [InlineData(true, false, "ex_booked_people_one_crew_a_day")]
    [InlineData(false, true, "ex_booked_equipment_one_crew_a_day")]
    public async Task NobodyAndNothing_IsWithTwoCrewsOnADay(bool samePerson, bool samePiece, string constraint)
    {
        var (given, db) = await GivenAsync();
        await using var _ = db;
        db.Add(Booked(given, crew: 0, Day, person: true, piece: true));
        await db.SaveChangesAsync();
        db.Add(Booked(given, crew: 1, Day, samePerson, samePiece));

        var fault = await Should.ThrowAsync<DbUpdateException>(() => db.SaveChangesAsync());

        ((PostgresException)fault.InnerException!).ConstraintName.ShouldBe(constraint);
    }

    [Fact]
    public async Task ACrew_DoesSeveralTasksOnADay_AndAnotherHasItsPeopleOnTheNext()
    {
        var (given, db) = await GivenAsync();
        await using var _ = db;
        db.Add(Booked(given, crew: 0, Day, person: true, piece: true));
        db.Add(Booked(given with { Tasks = [given.Tasks[1], given.Tasks[0]] }, crew: 0, Day, person: true, piece: true));
        db.Add(Booked(given, crew: 1, Day.PlusDays(1), person: true, piece: true));

        (await db.SaveChangesAsync()).ShouldBe(9);
    }

    private static Booking Booked(Given given, int crew, LocalDate day, bool person, bool piece)
    {
        var booking = new Booking
        {
            TaskId = given.Tasks[crew],
            CrewId = given.Crews[crew],
            Day = day,
            Hours = 4,
            Place = 0,
            IsFixed = false,
        };
        if (person)
            booking.People.Add(new() { BookingId = booking.Id, PersonId = given.Person, CrewId = booking.CrewId, Day = day });
        if (piece)
        {
            booking.Equipment.Add(
                new() { BookingId = booking.Id, EquipmentId = given.Piece, CrewId = booking.CrewId, Day = day });
        }
        return booking;
    }

    private async Task<(Given Given, WorkWindowsDb Db)> GivenAsync()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var client = await service.MachineAsync(organization);
        var person = await service.AddPersonAsync(organization, $"p.{Guid.NewGuid():N}@example.org", Role.CrewLead);
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        Guid[] tasks =
        [
            (await Land.TaskAsync(client, parcel, "cleanup")).Id(), (await Land.TaskAsync(client, parcel, "girdling")).Id(),
        ];
        var db = service.Database.Open(organization);
        Crew[] crews =
        [
            new() { Name = "North", LeadId = person, HoursPerDay = 8 },
            new() { Name = "South", LeadId = person, HoursPerDay = 8 },
        ];
        var piece = new Equipment { Name = "Winch 1", Kind = "rope winch" };
        db.AddRange(crews);
        db.Add(piece);
        await db.SaveChangesAsync();
        return (new(tasks, [crews[0].Id, crews[1].Id], person, piece.Id), db);
    }

    private sealed record Given(Guid[] Tasks, Guid[] Crews, Guid Person, Guid Piece);
}
