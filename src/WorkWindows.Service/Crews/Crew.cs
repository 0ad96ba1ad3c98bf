using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>People who work together.</summary>
public sealed class Crew : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string Name { get; set; }

    /// <summary>The member who leads; a crew lead or a consultant.</summary>
    public required Guid LeadId { get; set; }

    /// <summary>Hours of a working day, drives between properties included.</summary>
    public required decimal HoursPerDay { get; set; }

    /// <summary>Where its days begin and end, degrees north, WGS 84; null where they begin at the work.</summary>
    public double? BaseLatitude { get; set; }

    /// <summary>Degrees east.</summary>
    public double? BaseLongitude { get; set; }

    /// <summary>The first day on which it works; null where it always has.</summary>
    public LocalDate? FirstDay { get; set; }

    public LocalDate? LastDay { get; set; }

    /// <summary>The secret in the address of its calendar; null until somebody asks for one.</summary>
    public string? CalendarKey { get; set; }

    public Person Lead { get; private set; } = null!;
    public ICollection<CrewMember> Members { get; } = [];

    /// <summary>Replaces the members, which must have been loaded.</summary>
    public void Consist(IReadOnlyCollection<Guid> people)
    {
        foreach (var member in Members.Where(member => !people.Contains(member.PersonId)).ToList())
            Members.Remove(member);
        var kept = Members.Select(member => member.PersonId).ToList();
        foreach (var person in people.Except(kept))
            Members.Add(new() { CrewId = Id, PersonId = person });
    }
}

/// <summary>A person of a crew; a person may be of several.</summary>
public sealed class CrewMember : ITenantRow
{
    public required Guid CrewId { get; init; }
    public required Guid PersonId { get; init; }
    public Guid OrganizationId { get; private set; }
    public Person Person { get; private set; } = null!;
}

internal sealed class CrewMapping : IEntityTypeConfiguration<Crew>, IEntityTypeConfiguration<CrewMember>
{
    public void Configure(EntityTypeBuilder<Crew> builder)
    {
        builder.ToTable("crews", table =>
        {
            table.HasCheckConstraint("ck_crews_hours", "hours_per_day > 0 and hours_per_day <= 24");
            table.HasCheckConstraint("ck_crews_base", "(base_latitude is null) = (base_longitude is null)");
            table.HasCheckConstraint("ck_crews_days", "first_day <= last_day");
        });
        builder.HasIndex(crew => new { crew.OrganizationId, crew.Name }).IsUnique();
        builder.HasOne(crew => crew.Lead).WithMany().HasForeignKey(crew => crew.LeadId)
            .OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(crew => crew.Members).WithOne().HasForeignKey(member => member.CrewId)
            .OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<CrewMember> builder)
    {
        builder.ToTable("crew_members");
        builder.HasKey(member => new { member.CrewId, member.PersonId });
        builder.HasOne(member => member.Person).WithMany().HasForeignKey(member => member.PersonId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
