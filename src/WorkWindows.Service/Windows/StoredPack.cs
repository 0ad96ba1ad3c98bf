using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>A rule pack as it read when a decision relied on it. Never changed, never deleted.</summary>
public sealed class StoredPack : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string Hash { get; init; }
    public required string PackId { get; init; }
    public required string Version { get; init; }

    /// <summary>The YAML text that was hashed.</summary>
    public required string Text { get; init; }
}

internal sealed class StoredPackMapping : IEntityTypeConfiguration<StoredPack>
{
    public void Configure(EntityTypeBuilder<StoredPack> builder)
    {
        builder.ToTable("stored_packs");
        builder.HasIndex(pack => new { pack.OrganizationId, pack.Hash }).IsUnique();
    }
}
