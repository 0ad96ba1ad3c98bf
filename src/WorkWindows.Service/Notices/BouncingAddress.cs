using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>
/// A mail address whose server has said that there is no such mailbox. It belongs to the address and not to a person:
/// once the person has another, mails go out again, and a contact from outside is known by nothing else.
/// </summary>
public sealed class BouncingAddress : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>As <see cref="Normalize"/> gives it.</summary>
    public required string Address { get; init; }

    /// <summary>The status, such as 550 or 5.1.1.</summary>
    public required string Code { get; init; }

    public required Instant BouncedAt { get; init; }

    /// <summary>Mailboxes that differ in nothing but case are one in practice, whatever RFC 5321 allows.</summary>
    public static string Normalize(string address) => address.Trim().ToLowerInvariant();
}

/// <summary>A mail address that does not exist, as its server said.</summary>
/// <param name="Id">Names it when it is to be cleared.</param>
/// <param name="Code">The status, such as 550 or 5.1.1.</param>
/// <param name="At">When.</param>
public sealed record BounceView(Guid Id, string Code, Instant At);

/// <summary>All that bounce in an organization, which are few.</summary>
public sealed class BouncingAddresses
{
    private readonly Dictionary<string, BounceView> _byAddress;

    private BouncingAddresses(Dictionary<string, BounceView> byAddress) => _byAddress = byAddress;

    public static async Task<BouncingAddresses> ReadAsync(WorkWindowsDb db, CancellationToken cancellation) => new(
        await db.BouncingAddresses.AsNoTracking().ToDictionaryAsync(
            bounce => bounce.Address, bounce => new BounceView(bounce.Id, bounce.Code, bounce.BouncedAt),
            cancellation));

    /// <returns>Null when nothing is known against the address.</returns>
    public BounceView? Of(string address) => _byAddress.GetValueOrDefault(BouncingAddress.Normalize(address));
}

internal sealed class BouncingAddressMapping : IEntityTypeConfiguration<BouncingAddress>
{
    public void Configure(EntityTypeBuilder<BouncingAddress> builder)
    {
        builder.ToTable("bouncing_addresses");
        builder.HasIndex(bounce => new { bounce.OrganizationId, bounce.Address }).IsUnique();
    }
}
