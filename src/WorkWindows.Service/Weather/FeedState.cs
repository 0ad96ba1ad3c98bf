using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>What is fetched for a station. Stored by name.</summary>
public enum WeatherFeed
{
    Observations,
    Forecasts,
    Alerts,
}

/// <summary>How it goes with fetching one kind of weather for one station.</summary>
public sealed class FeedState : ITenantRow
{
    public Guid OrganizationId { get; private set; }
    public required Guid StationId { get; init; }
    public required WeatherFeed Feed { get; init; }
    public required Instant FirstAttemptAt { get; init; }
    public required Instant LastAttemptAt { get; set; }

    /// <summary>When it last gave an answer that could be used, with new values or without.</summary>
    public Instant? LastSuccessAt { get; set; }

    /// <summary>
    /// How new the newest values are: when the forecast was issued, when the alerts were answered, when the last
    /// observed day ended. Null until something has come.
    /// </summary>
    public Instant? NewestAt { get; set; }

    /// <summary>Why the last attempt failed; null when it did not.</summary>
    public string? LastError { get; set; }

    /// <summary>
    /// When the outage that lasts was seen, and the tasks that it touches were given to be looked at; null when none
    /// lasts.
    /// </summary>
    public Instant? OutSeenAt { get; set; }

    /// <summary>
    /// When the consultants were told of the outage that lasts; null when none lasts or they were not told.
    /// </summary>
    public Instant? ToldAt { get; set; }

    /// <summary>Whether what has come is too old to be used, so that days are not known for want of it.</summary>
    public bool IsOut(Instant now) => now - (NewestAt ?? FirstAttemptAt) > Feed switch
    {
        WeatherFeed.Observations => WeatherRecords.LongestObservationAge,
        WeatherFeed.Forecasts => WeatherRecords.LongestUsableAge,
        WeatherFeed.Alerts => WeatherRecords.LongestAlertAge,
    };
}

internal sealed class FeedStateMapping : IEntityTypeConfiguration<FeedState>
{
    public void Configure(EntityTypeBuilder<FeedState> builder)
    {
        builder.ToTable("feed_states");
        builder.HasKey(state => new { state.StationId, state.Feed });
        builder.Property(state => state.Feed).HasConversion<string>();
        builder.HasOne<Station>().WithMany().HasForeignKey(state => state.StationId).OnDelete(DeleteBehavior.Cascade);
    }
}
