using System.Collections.Immutable;
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
    ImmutableSortedSet<SiteFlag> SiteFlags);
