using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A due time that passed with its grace without a sign of life. Never deleted.</summary>
public sealed class MissedCheckIn : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid WatchId { get; init; }
    public required Instant DueAt { get; init; }
    public required Instant RaisedAt { get; init; }
    public required Instant NextCallAt { get; set; }

    /// <summary>When somebody took it over, which stops the calls.</summary>
    public Instant? AcknowledgedAt { get; set; }

    public string? AcknowledgedBy { get; set; }

    /// <summary>When the crew was heard from again.</summary>
    public Instant? ClearedAt { get; set; }

    public ICollection<AlarmCall> Calls { get; } = [];

    public bool IsEscalating => AcknowledgedAt is null && ClearedAt is null;
}

/// <summary>One step of an escalation: a contact is written to. Only ever added.</summary>
public sealed class AlarmCall : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid MissedId { get; init; }

    /// <summary>From 0, without gaps; after the last contact the first one comes again.</summary>
    public required int Number { get; init; }

    /// <summary>The contact's place in the order.</summary>
    public required int Place { get; init; }

    public required Instant WrittenAt { get; init; }

    /// <summary>The key of its message.</summary>
    public string MessageKey => $"check-in-missed:{MissedId}:{Number}";

    /// <returns>The missed check-in that a message of this key is about; null for another key.</returns>
    public static Guid? MissedOf(string messageKey) =>
        messageKey.Split(':') is ["check-in-missed", var id, _] && Guid.TryParse(id, out var missed) ? missed : null;
}

internal sealed class MissedCheckInMapping
    : IEntityTypeConfiguration<MissedCheckIn>, IEntityTypeConfiguration<AlarmCall>
{
    public void Configure(EntityTypeBuilder<MissedCheckIn> builder)
    {
        builder.ToTable("missed_check_ins", table => table.HasCheckConstraint(
            "ck_missed_check_ins_acknowledged", "(acknowledged_at is null) = (acknowledged_by is null)"));
        builder.HasIndex(missed => missed.WatchId).IsUnique()
            .HasFilter("acknowledged_at is null and cleared_at is null").HasDatabaseName(
                "ix_missed_check_ins_escalating");
        builder.HasMany(missed => missed.Calls).WithOne().HasForeignKey(call => call.MissedId)
            .OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<AlarmCall> builder)
    {
        builder.ToTable("alarm_calls");
        builder.HasIndex(call => new { call.MissedId, call.Number }).IsUnique();
    }
}
