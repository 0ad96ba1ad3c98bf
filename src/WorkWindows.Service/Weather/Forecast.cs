using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>What was foretold for a station, kept with the time it was issued.</summary>
public sealed class Forecast : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid StationId { get; init; }
    public required Instant IssuedAt { get; init; }
    public required Instant FetchedAt { get; init; }
    public ICollection<ForecastReading> Readings { get; } = [];
}

/// <summary>One foretold value of one day, in the unit of its element.</summary>
public sealed class ForecastReading : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public Guid ForecastId { get; private set; }
    public required DailyElement Element { get; init; }
    public required LocalDate Date { get; init; }
    public required double Value { get; init; }
}

internal sealed class ForecastMapping : IEntityTypeConfiguration<Forecast>, IEntityTypeConfiguration<ForecastReading>
{
    public void Configure(EntityTypeBuilder<Forecast> builder)
    {
        builder.ToTable("forecasts");
        builder.HasIndex(forecast => new { forecast.OrganizationId, forecast.StationId, forecast.IssuedAt })
            .IsUnique();
        builder.HasOne<Station>().WithMany().HasForeignKey(forecast => forecast.StationId)
            .OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<ForecastReading> builder)
    {
        builder.ToTable("forecast_readings");
        builder.HasKey(reading => new { reading.ForecastId, reading.Element, reading.Date });
        builder.Property(reading => reading.Element).HasConversion<short>();
        builder.HasOne<Forecast>().WithMany(forecast => forecast.Readings)
            .HasForeignKey(reading => reading.ForecastId).OnDelete(DeleteBehavior.Cascade);
    }
}
