using System.Collections.Immutable;
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

    /// <summary>What one of a unit is worth, points of the consultant's own; units that are not there have the usual weight.</summary>
    public ImmutableSortedDictionary<string, decimal> Points { get; set; } = ImmutableSortedDictionary<string, decimal>.Empty;

    /// <summary>Titles of certificates, each held by somebody present.</summary>
    public List<string> Certificates { get; set; } = [];

    /// <summary>Kinds of equipment that must be there.</summary>
    public List<string> EquipmentKinds { get; set; } = [];
}

internal sealed class PracticeSettingMapping : IEntityTypeConfiguration<PracticeSetting>
{
    public void Configure(EntityTypeBuilder<PracticeSetting> builder)
    {
        builder.ToTable("practice_settings");
        builder.Property(setting => setting.Points).HasColumnType("jsonb").HasConversion(
            SettingJson.Converter<ImmutableSortedDictionary<string, decimal>>(),
            SettingJson.Comparer<ImmutableSortedDictionary<string, decimal>>());
        builder.HasIndex(setting => new { setting.OrganizationId, setting.PracticeId }).IsUnique();
    }
}
