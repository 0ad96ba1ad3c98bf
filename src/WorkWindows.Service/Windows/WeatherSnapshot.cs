using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>The readings that decisions were made from. Never changed, never deleted.</summary>
public sealed class WeatherSnapshot : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string Hash { get; init; }
    public required byte[] Content { get; init; }
}

internal sealed class WeatherSnapshotMapping : IEntityTypeConfiguration<WeatherSnapshot>
{
    public void Configure(EntityTypeBuilder<WeatherSnapshot> builder)
    {
        builder.ToTable("weather_snapshots");
        builder.HasIndex(snapshot => new { snapshot.OrganizationId, snapshot.Hash }).IsUnique();
    }
}
