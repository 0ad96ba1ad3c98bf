using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Evaluation;

/// <summary>What rules may know of a task and its parcel besides the signals.</summary>
/// <param name="TaskId">The task's identifier, repeated in what is decided about it.</param>
/// <param name="Practice">The kind of work.</param>
/// <param name="State">Two-letter postal code.</param>
/// <param name="CountyFips">Five digits, the first two those of the state.</param>
/// <param name="SpeciesGroups">The groups in the parcel's stand; null when no inventory has been taken.</param>
/// <param name="SiteFlags">What has been noted of the parcel.</param>
public sealed record TaskFacts(
    string TaskId,
    Practice Practice,
    string State,
    string CountyFips,
    ImmutableSortedSet<SpeciesGroup>? SpeciesGroups,
    ImmutableSortedSet<SiteFlag> SiteFlags)
{
    /// <summary>The name of the organization that plans the task; null when nobody said.</summary>
    public string? Organization { get; init; }

    /// <summary>Where the parcel lies; null when nobody said.</summary>
    public Place? Place { get; init; }

    /// <summary>The exceptions that people have made for the task.</summary>
    public ImmutableArray<RuleOverride> Overrides { get; init; } = [];
}

/// <summary>A named person's exception to a rule for a task, dated, reasoned and expiring.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="First">The first day it counts on.</param>
/// <param name="Last">The last day, included.</param>
/// <param name="By">Who made it.</param>
/// <param name="Reason">Why.</param>
public sealed record RuleOverride(string RuleId, LocalDate First, LocalDate Last, string By, string Reason);
