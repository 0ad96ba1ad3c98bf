using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>A machine or tool that one crew at a time can have.</summary>
public sealed class Equipment : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string Name { get; set; }

    /// <summary>What work asks for, such as a rope winch.</summary>
    public required string Kind { get; set; }

    /// <summary>The only crew that uses it; null where every crew may.</summary>
    public Guid? CrewId { get; set; }
}

internal sealed class EquipmentMapping : IEntityTypeConfiguration<Equipment>
{
    public void Configure(EntityTypeBuilder<Equipment> builder)
    {
        builder.ToTable("equipment");
        builder.HasIndex(piece => new { piece.OrganizationId, piece.Name }).IsUnique();
        builder.HasOne<Crew>().WithMany().HasForeignKey(piece => piece.CrewId).OnDelete(DeleteBehavior.Restrict);
    }
}
