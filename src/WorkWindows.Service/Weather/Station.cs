using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.TimeZones;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>A weather point with a record of its own.</summary>
public sealed class Station : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>The eleven characters that GHCN-Daily knows it by.</summary>
    public required string GhcnId { get; init; }

    public required string Name { get; set; }

    /// <summary>Degrees north, WGS 84.</summary>
    public required double Latitude { get; set; }

    /// <summary>Degrees east, WGS 84.</summary>
    public required double Longitude { get; set; }

    /// <summary>Metres above sea level.</summary>
    public double? ElevationM { get; set; }

    /// <summary>Whether its temperatures were read in whole °F, as United States stations report them.</summary>
    public required bool WholeFahrenheit { get; set; }

    /// <summary>
    /// Raised whenever its readings or its place change, so that what was computed from them is known to be old.
    /// </summary>
    public int RecordVersion { get; set; }

    /// <summary>
    /// When its readings last changed; null when that was before it was recorded, or when it has none. What was known
    /// of them at this time or later is what is known now.
    /// </summary>
    public Instant? RecordChangedAt { get; set; }

    /// <summary>The first day with a reading; null without any.</summary>
    public LocalDate? FirstDay { get; set; }

    /// <summary>
    /// The last day with temperatures that may be used, or with any reading where it reads no temperature: many
    /// stations go on reading rain alone, and days are judged by temperatures. Null without any.
    /// </summary>
    public LocalDate? LastDay { get; set; }

    /// <summary>The share of the record's last years with minimum and maximum, 0 to 1.</summary>
    public double TemperatureCoverage { get; set; }

    /// <summary>The share of the record's last years with wind and gust, 0 to 1.</summary>
    public double WindCoverage { get; set; }

    /// <returns>When <see cref="LastDay"/> ended; null without it.</returns>
    public Instant? ObservedUntil() => LastDay?.PlusDays(1).AtStartOfDayInZone(DateTimeZone.Utc).ToInstant();

    public WeatherStation Described() => new(GhcnId, Name, Latitude, Longitude, ElevationM);

    /// <summary>Where feeds are asked for it.</summary>
    public FeedPlace Place => new(GhcnId, Latitude, Longitude, ElevationM);

    /// <summary>The zone whose days it reports.</summary>
    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[TimeZoneLookup.Find(Latitude, Longitude)];
}

internal sealed class StationMapping : IEntityTypeConfiguration<Station>
{
    public void Configure(EntityTypeBuilder<Station> builder)
    {
        builder.ToTable("stations");
        builder.Ignore(station => station.Place);
        builder.Ignore(station => station.Zone);
        builder.HasIndex(station => new { station.OrganizationId, station.GhcnId }).IsUnique();
    }
}
