using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace WorkWindows.Service.Accounts;

/// <summary>A consultancy: the tenant that every other row belongs to.</summary>
public sealed class Organization
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public required string Name { get; set; }

    /// <summary>The IANA zone whose night the nightly job runs in.</summary>
    public required string TimeZone { get; set; }

    public LocalTime ShiftStart { get; set; } = new(8, 0);
    public LocalTime ShiftEnd { get; set; } = new(17, 0);

    /// <summary>Printed at the foot of every mail.</summary>
    public required string PostalAddress { get; set; }

    /// <summary>Signs addresses in mails that work without signing in. It never leaves the service.</summary>
    public byte[] LinkKey { get; init; } = RandomNumberGenerator.GetBytes(32);
}

internal sealed class OrganizationMapping : IEntityTypeConfiguration<Organization>
{
    public void Configure(EntityTypeBuilder<Organization> builder) =>
        builder.ToTable("organizations", table =>
            table.HasCheckConstraint("ck_organizations_shift", "shift_start < shift_end"));
}
