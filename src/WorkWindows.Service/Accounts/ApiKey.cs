using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>A machine's way in. The secret is shown once, at creation; only its hash is kept.</summary>
public sealed class ApiKey : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string Name { get; set; }

    /// <summary>SHA-256 of a random secret of 32 bytes: too long to guess, so no slow hash is needed.</summary>
    public required byte[] SecretHash { get; init; }

    public required Role Role { get; init; }
    public required Instant CreatedAt { get; init; }
    public Instant? RevokedAt { get; set; }
}

internal sealed class ApiKeyMapping : IEntityTypeConfiguration<ApiKey>
{
    public void Configure(EntityTypeBuilder<ApiKey> builder)
    {
        builder.ToTable("api_keys");
        builder.Property(key => key.Role).HasConversion<string>();
    }
}
