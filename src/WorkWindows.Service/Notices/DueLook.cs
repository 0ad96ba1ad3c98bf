using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

/// <summary>
/// What has changed and was not looked at since. Stored with the change, so that nothing that closes a day is
/// forgotten when the service dies before the look is begun; the look that follows takes it away.
/// </summary>
public sealed class DueLook : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Instant NotedAt { get; init; }

    /// <summary>Whether all tasks are to be looked at, whatever the lists say.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>Stations whose record changed.</summary>
    public required List<Guid> Records { get; init; }

    /// <summary>Stations whose forecast or alerts changed.</summary>
    public required List<Guid> Outlooks { get; init; }

    /// <summary>Parcels that take their weather from other stations, or are not as they were before.</summary>
    public required List<Guid> Parcels { get; init; }

    /// <returns>All that has changed; null where all tasks are to be looked at.</returns>
    public static WeatherChange? Together(IReadOnlyCollection<DueLook> looks) => looks.Any(look => look.IsWhole)
        ? null
        : new(
            [.. looks.SelectMany(look => look.Records).Distinct()],
            [.. looks.SelectMany(look => look.Outlooks).Distinct()],
            [.. looks.SelectMany(look => look.Parcels).Distinct()]);
}

internal sealed class DueLookMapping : IEntityTypeConfiguration<DueLook>
{
    public void Configure(EntityTypeBuilder<DueLook> builder) => builder.ToTable("due_looks");
}
