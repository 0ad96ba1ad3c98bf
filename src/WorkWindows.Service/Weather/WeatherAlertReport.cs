using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// What the weather service answered when it was asked for the alerts of a station. Every answer is kept, one without
/// alerts too: it is what tells a quiet day from one on which nobody asked.
/// </summary>
public sealed class WeatherAlertReport : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid StationId { get; init; }
    public required Instant FetchedAt { get; init; }
    public ICollection<ReportedAlert> Alerts { get; } = [];
}

/// <summary>An alert of a report.</summary>
public sealed class ReportedAlert : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public Guid ReportId { get; private set; }
    public required AlertKind Kind { get; init; }

    /// <summary>The service's own name for it.</summary>
    public required string Event { get; init; }

    public required Instant StartsAt { get; init; }
    public required Instant EndsAt { get; init; }

    public static ReportedAlert Of(ActiveAlert alert) =>
        new() { Kind = alert.Kind, Event = alert.Event, StartsAt = alert.StartsAt, EndsAt = alert.EndsAt };

    public ActiveAlert ToActive() => new(Kind, Event, StartsAt, EndsAt);
}

internal sealed class AlertMapping
    : IEntityTypeConfiguration<WeatherAlertReport>, IEntityTypeConfiguration<ReportedAlert>
{
    public void Configure(EntityTypeBuilder<WeatherAlertReport> builder)
    {
        builder.ToTable("weather_alert_reports");
        builder.HasIndex(report => new { report.OrganizationId, report.StationId, report.FetchedAt });
        builder.HasOne<Station>().WithMany().HasForeignKey(report => report.StationId)
            .OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<ReportedAlert> builder)
    {
        builder.ToTable("weather_alerts");
        builder.HasKey(alert => new { alert.ReportId, alert.Kind, alert.Event, alert.StartsAt, alert.EndsAt });
        builder.Property(alert => alert.Kind).HasConversion<string>();
        builder.HasOne<WeatherAlertReport>().WithMany(report => report.Alerts)
            .HasForeignKey(alert => alert.ReportId).OnDelete(DeleteBehavior.Cascade);
    }
}
