using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Crews;

/// <summary>A crew's work on a task on one day, as it was published.</summary>
public sealed class Booking : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }
    public required Guid CrewId { get; init; }

    /// <summary>The day in the property's zone.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>Hours of the whole crew at the work, drives not included.</summary>
    public required decimal Hours { get; init; }

    /// <summary>The place among the crew's work of the day, from 0.</summary>
    public required int Place { get; set; }

    /// <summary>Whether somebody put it there by hand, so that a new plan leaves it.</summary>
    public required bool IsFixed { get; init; }

    public PlannedTask Task { get; private set; } = null!;
    public Crew Crew { get; private set; } = null!;
    public ICollection<BookedPerson> People { get; } = [];
    public ICollection<BookedEquipment> Equipment { get; } = [];
}

/// <summary>Somebody of a crew on a day. The database refuses a person with two crews on a day.</summary>
public sealed class BookedPerson : ITenantRow
{
    public required Guid BookingId { get; init; }
    public required Guid PersonId { get; init; }
    public required Guid CrewId { get; init; }
    public required LocalDate Day { get; init; }
    public Guid OrganizationId { get; private set; }
}

/// <summary>A piece of equipment with a crew on a day. The database refuses one with two crews on a day.</summary>
public sealed class BookedEquipment : ITenantRow
{
    public required Guid BookingId { get; init; }
    public required Guid EquipmentId { get; init; }
    public required Guid CrewId { get; init; }
    public required LocalDate Day { get; init; }
    public Guid OrganizationId { get; private set; }
}

internal sealed class BookingMapping :
    IEntityTypeConfiguration<Booking>, IEntityTypeConfiguration<BookedPerson>, IEntityTypeConfiguration<BookedEquipment>
{
    public void Configure(EntityTypeBuilder<Booking> builder)
    {
        builder.ToTable("bookings", table =>
            table.HasCheckConstraint("ck_bookings_hours", "hours > 0 and hours <= 24"));
        builder.HasIndex(booking => new { booking.TaskId, booking.Day }).IsUnique();
        builder.HasIndex(booking => new { booking.OrganizationId, booking.Day });
        // What a person and a piece are with and when cannot differ from the booking.
        builder.HasAlternateKey(booking => new { booking.Id, booking.CrewId, booking.Day });
        builder.HasOne(booking => booking.Task).WithMany().HasForeignKey(booking => booking.TaskId)
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasOne(booking => booking.Crew).WithMany().HasForeignKey(booking => booking.CrewId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(booking => booking.People).WithOne()
            .HasForeignKey(person => new { person.BookingId, person.CrewId, person.Day })
            .HasPrincipalKey(booking => new { booking.Id, booking.CrewId, booking.Day })
            .OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(booking => booking.Equipment).WithOne()
            .HasForeignKey(piece => new { piece.BookingId, piece.CrewId, piece.Day })
            .HasPrincipalKey(booking => new { booking.Id, booking.CrewId, booking.Day })
            .OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<BookedPerson> builder)
    {
        builder.ToTable("booked_people");
        builder.HasKey(person => new { person.BookingId, person.PersonId });
        builder.HasOne<Person>().WithMany().HasForeignKey(person => person.PersonId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<BookedEquipment> builder)
    {
        builder.ToTable("booked_equipment");
        builder.HasKey(piece => new { piece.BookingId, piece.EquipmentId });
        builder.HasOne<Equipment>().WithMany().HasForeignKey(piece => piece.EquipmentId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
