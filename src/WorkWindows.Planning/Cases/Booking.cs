using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Planning.Cases;

/// <summary>A crew's work on a task on one day.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="CrewId">The crew.</param>
/// <param name="Day">The day.</param>
/// <param name="Hours">Hours of the crew at the work, drives not included.</param>
/// <param name="Place">The place among the crew's work of the day, from 0.</param>
public sealed record Booking(string TaskId, string CrewId, LocalDate Day, double Hours, int Place = 0)
{
    /// <summary>Who goes.</summary>
    public ImmutableArray<string> Members { get; init; } = [];

    /// <summary>What they take.</summary>
    public ImmutableArray<string> EquipmentIds { get; init; } = [];
}

/// <summary>Two tasks on land within the spacing distance: two crews are never at both on one day.</summary>
public readonly record struct TooClose(string TaskId, string OtherTaskId);
