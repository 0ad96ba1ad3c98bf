using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A crew on site that is looked for when it is not heard from. Never deleted.</summary>
public sealed class CrewWatch : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }

    /// <summary>The day in the property's zone.</summary>
    public required LocalDate Day { get; init; }

    public required int PeopleOnSite { get; init; }

    /// <summary>From one check-in to the next.</summary>
    public required int IntervalMinutes { get; init; }

    /// <summary>From the due time to the first call.</summary>
    public required int GraceMinutes { get; init; }

    /// <summary>From one call to the next.</summary>
    public required int EscalationMinutes { get; init; }

    public required Instant StartedAt { get; init; }

    /// <summary>The person, or null for a machine.</summary>
    public Guid? StartedById { get; init; }

    public required string StartedBy { get; init; }

    /// <summary>When the crew is to be heard from next.</summary>
    public required Instant DueAt { get; set; }

    public Instant? EndedAt { get; set; }

    /// <summary>
    /// Why the task was not released when the crew said it was on the site already; null where it was.
    /// </summary>
    public string? BegunUnreleased { get; init; }

    /// <summary>Signs the links by which contacts acknowledge.</summary>
    public required byte[] LinkKey { get; init; }

    public ICollection<WatchContact> Contacts { get; } = [];
    public ICollection<CheckIn> CheckIns { get; } = [];
    public ICollection<MissedCheckIn> Missed { get; } = [];

    public Duration Interval => Duration.FromMinutes(IntervalMinutes);

    /// <summary>When the first contact is written to, unless the crew is heard from.</summary>
    public Instant CalledAt => DueAt + Duration.FromMinutes(GraceMinutes);

    /// <summary>The last sign of life; needs the check-ins.</summary>
    public CheckIn LastHeard => CheckIns.MaxBy(checkIn => checkIn.Number)!;

    /// <summary>The missed check-in that nobody has acknowledged, or null; needs the missed ones.</summary>
    public MissedCheckIn? Escalating => Missed.SingleOrDefault(missed => missed.IsEscalating);

    /// <summary>
    /// What <see cref="Escalation"/> decides by; needs contacts and missed check-ins with their calls.
    /// </summary>
    internal WatchTimes Times => new(
        Interval, Duration.FromMinutes(GraceMinutes), Duration.FromMinutes(EscalationMinutes), Contacts.Count, DueAt,
        Escalating is { } missed ? new(missed.Calls.Count, missed.NextCallAt) : null);
}

/// <summary>Somebody who is written to, with name and address as they were when the watch began.</summary>
public sealed class WatchContact : ITenantRow
{
    public required Guid WatchId { get; init; }

    /// <summary>The place in the order, from 0.</summary>
    public required int Place { get; init; }

    public Guid OrganizationId { get; private set; }

    /// <summary>The person of the organization, or null for somebody else.</summary>
    public Guid? PersonId { get; init; }

    public required string Name { get; init; }
    public required string Address { get; init; }

    /// <summary>Where each is reached: by mail always, and by the webhook of a person who has one.</summary>
    internal static async Task<IReadOnlyList<(WatchContact Contact, Reachable Reachable)>> ReachableAsync(
        WorkWindowsDb db, IReadOnlyCollection<WatchContact> contacts, CancellationToken cancellation)
    {
        var webhooks = await Reachable.WebhooksAsync(
            db, contacts.Select(contact => contact.PersonId), cancellation);
        return
        [
            .. contacts.Select(contact => (contact, new Reachable(
                contact.PersonId, contact.Address,
                contact.PersonId is { } person ? webhooks.GetValueOrDefault(person) : null))),
        ];
    }
}

internal sealed class CrewWatchMapping : IEntityTypeConfiguration<CrewWatch>, IEntityTypeConfiguration<WatchContact>
{
    public void Configure(EntityTypeBuilder<CrewWatch> builder)
    {
        builder.ToTable("crew_watches", table =>
        {
            table.HasCheckConstraint("ck_crew_watches_people", "people_on_site > 0");
            table.HasCheckConstraint(
                "ck_crew_watches_minutes", "interval_minutes > 0 and grace_minutes >= 0 and escalation_minutes > 0");
        });
        builder.Ignore(watch => watch.LastHeard).Ignore(watch => watch.Escalating).Ignore(watch => watch.Times);
        builder.HasIndex(watch => watch.TaskId).IsUnique().HasFilter("ended_at is null")
            .HasDatabaseName("ix_crew_watches_open");
        builder.HasIndex(watch => new { watch.OrganizationId, watch.TaskId, watch.StartedAt });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(watch => watch.TaskId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(watch => watch.StartedById).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(watch => watch.Contacts).WithOne().HasForeignKey(contact => contact.WatchId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(watch => watch.CheckIns).WithOne().HasForeignKey(checkIn => checkIn.WatchId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(watch => watch.Missed).WithOne().HasForeignKey(missed => missed.WatchId)
            .OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<WatchContact> builder)
    {
        builder.ToTable("watch_contacts");
        builder.HasKey(contact => new { contact.WatchId, contact.Place });
        builder.HasOne<Person>().WithMany().HasForeignKey(contact => contact.PersonId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
