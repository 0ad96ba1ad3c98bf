using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Rules;

/// <summary>A rule pack of the organization or of one property, as it stands now; its texts are stored packs.</summary>
public sealed class OrganizationPack : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string PackId { get; init; }

    /// <summary>The property that it is for; null for all of the organization's.</summary>
    public Guid? PropertyId { get; init; }

    public required string Version { get; set; }

    /// <summary>Names the stored pack that holds its text.</summary>
    public required string Hash { get; set; }

    /// <summary>The person who handed it in, or null for a machine.</summary>
    public Guid? ChangedById { get; set; }

    public required Instant ChangedAt { get; set; }
}

internal sealed class OrganizationPackMapping : IEntityTypeConfiguration<OrganizationPack>
{
    public void Configure(EntityTypeBuilder<OrganizationPack> builder)
    {
        builder.ToTable("organization_packs");
        builder.HasIndex(pack => new { pack.OrganizationId, pack.PackId }).IsUnique();
        builder.HasOne<Property>().WithMany().HasForeignKey(pack => pack.PropertyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Person>().WithMany().HasForeignKey(pack => pack.ChangedById).OnDelete(DeleteBehavior.Restrict);
    }
}
