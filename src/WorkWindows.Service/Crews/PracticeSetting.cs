using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>What an organization asks of a practice, and what it is worth to it.</summary>
public sealed class PracticeSetting : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required string PracticeId { get; init; }

    /// <summary>What a unit of its quantity is worth, points of the consultant's own; null for the usual weight.</summary>
    public decimal? PointsPerUnit { get; set; }

    /// <summary>Titles of certificates, each held by somebody present.</summary>
    public List<string> Certificates { get; set; } = [];

    /// <summary>Kinds of equipment that must be there.</summary>
    public List<string> EquipmentKinds { get; set; } = [];
}

internal sealed class PracticeSettingMapping : IEntityTypeConfiguration<PracticeSetting>
{
    public void Configure(EntityTypeBuilder<PracticeSetting> builder)
    {
        builder.ToTable("practice_settings", table =>
            table.HasCheckConstraint("ck_practice_settings_points", "points_per_unit >= 0"));
        builder.HasIndex(setting => new { setting.OrganizationId, setting.PracticeId }).IsUnique();
    }
}
