using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>
/// An entry of a person's calendar as it was last told, by mail or feed: a calendar takes a later word on the same
/// entry only under a higher sequence number.
/// </summary>
public sealed class CalendarDay : ITenantRow
{
    public required Guid PersonId { get; init; }

    /// <summary>What the identifier (UID, RFC 5545 3.8.4.7) of the entry begins with; its domain follows.</summary>
    public required string Key { get; init; }

    public Guid OrganizationId { get; private set; }
    public required LocalDate First { get; set; }

    /// <summary>The last day, included.</summary>
    public required LocalDate Last { get; set; }

    /// <summary>The working hours in <see cref="TimeZone"/>, or null, as the end is, for whole days.</summary>
    public LocalTime? From { get; set; }

    public LocalTime? Until { get; set; }

    /// <summary>The IANA zone of the property.</summary>
    public required string TimeZone { get; set; }

    public required string Title { get; set; }
    public required string Place { get; set; }
    public required bool IsCancelled { get; set; }

    /// <summary>The sequence number (RFC 5545, 3.8.7.4), from 0; it grows with every change.</summary>
    public required int Sequence { get; set; }

    public required Instant ChangedAt { get; set; }
}

internal sealed class CalendarDayMapping : IEntityTypeConfiguration<CalendarDay>
{
    public void Configure(EntityTypeBuilder<CalendarDay> builder)
    {
        builder.ToTable("calendar_days", table =>
        {
            table.HasCheckConstraint("ck_calendar_days_order", "first <= last");
            table.HasCheckConstraint("ck_calendar_days_hours", "(\"from\" is null) = (until is null)");
        });
        builder.HasKey(day => new { day.PersonId, day.Key });
        builder.HasOne<Person>().WithMany().HasForeignKey(day => day.PersonId).OnDelete(DeleteBehavior.Cascade);
    }
}
