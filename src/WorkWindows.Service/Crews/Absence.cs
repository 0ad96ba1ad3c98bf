using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Days on which a person or a whole crew is off, or a piece of equipment is not to be had: one of the three.</summary>
public sealed class Absence : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public Guid? PersonId { get; init; }
    public Guid? CrewId { get; init; }
    public Guid? EquipmentId { get; init; }
    public required LocalDate FirstDay { get; init; }

    /// <summary>The last day, included.</summary>
    public required LocalDate LastDay { get; init; }

    public string? Reason { get; init; }
}

internal sealed class AbsenceMapping : IEntityTypeConfiguration<Absence>
{
    public void Configure(EntityTypeBuilder<Absence> builder)
    {
        builder.ToTable("absences", table =>
        {
            table.HasCheckConstraint("ck_absences_one", "num_nonnulls(person_id, crew_id, equipment_id) = 1");
            table.HasCheckConstraint("ck_absences_days", "first_day <= last_day");
        });
        builder.HasIndex(absence => new { absence.OrganizationId, absence.LastDay });
        builder.HasOne<Person>().WithMany().HasForeignKey(absence => absence.PersonId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Crew>().WithMany().HasForeignKey(absence => absence.CrewId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Equipment>().WithMany().HasForeignKey(absence => absence.EquipmentId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
