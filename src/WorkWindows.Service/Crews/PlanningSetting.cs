using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Suitability;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>What an organization has set for its plans and its advice; without a row the usual values count.</summary>
public sealed class PlanningSetting : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>Points that an hour of driving costs.</summary>
    public double PointsPerTravelHour { get; set; } = 1;

    /// <summary>Points that it costs to change a day that was told to somebody.</summary>
    public double PointsPerChange { get; set; } = 2;

    /// <summary>The road is as much longer than the great circle: common practice, no source.</summary>
    public double RoadFactor { get; set; } = 1.3;

    /// <summary>Speed on the road, km/h: common practice, no source.</summary>
    public double RoadSpeedKmPerHour { get; set; } = 60;

    /// <summary>Two crews keep at least so far apart, feet.</summary>
    public double SpacingFt { get; set; } = 300;

    /// <summary>What hinge cuts keep within.</summary>
    public HingeLimits HingeLimits { get; set; } = new();

    /// <summary>Years after which follow-ups are due.</summary>
    public FollowUpYears FollowUpYears { get; set; } = new();
}

internal sealed class PlanningSettingMapping : IEntityTypeConfiguration<PlanningSetting>
{
    public void Configure(EntityTypeBuilder<PlanningSetting> builder)
    {
        builder.ToTable("planning_settings");
        builder.HasIndex(setting => setting.OrganizationId).IsUnique();
        builder.Property(setting => setting.HingeLimits).HasColumnType("jsonb")
            .HasConversion(SettingJson.Converter<HingeLimits>(), SettingJson.Comparer<HingeLimits>());
        builder.Property(setting => setting.FollowUpYears).HasColumnType("jsonb")
            .HasConversion(SettingJson.Converter<FollowUpYears>(), SettingJson.Comparer<FollowUpYears>());
    }
}
