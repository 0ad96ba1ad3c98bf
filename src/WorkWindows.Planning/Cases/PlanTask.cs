using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Planning.Cases;

/// <summary>Work to be planned.</summary>
public sealed record PlanTask
{
    public required string Id { get; init; }

    /// <summary>Where it is: the id of a place that <see cref="TravelTimes"/> knows.</summary>
    public required string Place { get; init; }

    /// <summary>What kind of work it is, as <see cref="PlanCrew.Paces"/> names it; null where no crew has a pace of its own.</summary>
    public string? Practice { get; init; }

    /// <summary>Hours of a whole crew of the usual pace at the work, drives not included; above 0.</summary>
    public required double Hours { get; init; }

    /// <summary>The least number of people at it; 2 or more where nobody may be alone.</summary>
    public required int CrewSize { get; init; }

    /// <summary>Titles of certificates, each held by somebody present and valid on the day.</summary>
    public ImmutableArray<string> Skills { get; init; } = [];

    /// <summary>Kinds of equipment that must be there.</summary>
    public ImmutableArray<string> EquipmentKinds { get; init; } = [];

    /// <summary>Ids of tasks that must be finished on an earlier day.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>The first day on which it may be done; null for any.</summary>
    public LocalDate? NotBefore { get; init; }

    /// <summary>The last day, included; null for any.</summary>
    public LocalDate? Deadline { get; init; }

    /// <summary>What it is worth when it is done, points of the planner's own; 0 or more.</summary>
    public required double Benefit { get; init; }

    /// <summary>
    /// The chance that it may be worked, 0 to 1, for each day of the case; null, as 0, is a day on which it is never
    /// planned: closed, or not known.
    /// </summary>
    public required ImmutableArray<double?> Chances { get; init; }
}
