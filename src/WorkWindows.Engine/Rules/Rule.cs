using System.Collections.Immutable;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Rules;

/// <summary>A condition on signals and calendar, where it applies, what it does and where it comes from.</summary>
/// <param name="Id">Its key: lower case, hyphens and dots; unique in its pack.</param>
/// <param name="Title">What it says, in a few words for people.</param>
/// <param name="Effect">What it does to a day on which the condition holds.</param>
/// <param name="Scope">The tasks that it speaks of.</param>
/// <param name="When">The condition.</param>
/// <param name="Because">Why the effect follows, in one plain sentence.</param>
/// <param name="Measure">What must be done on the days that it limits, or what it requires; null otherwise.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="Valid">The years that the source speaks of.</param>
/// <param name="LifeSafety">It keeps people from being hurt, so that nobody may lift it.</param>
/// <param name="Lifts">The id of the rule of a higher pack that it lifts; null for another effect.</param>
public sealed record Rule(
    string Id,
    string Title,
    Effect Effect,
    Scope Scope,
    Condition When,
    string Because,
    string? Measure,
    Authority Authority,
    RuleSource Source,
    ValidYears Valid,
    bool LifeSafety = false,
    string? Lifts = null)
{
    /// <summary>Whether a rule of a lower pack or a person's override may lift it: law and life-safety never.</summary>
    public bool MayBeLifted => Authority != Authority.Regulation && !LifeSafety;

    /// <summary>Whether a person can make an exception to it: it closes or limits, and may be lifted.</summary>
    public bool MayBeExcepted => Effect is Effect.Closes or Effect.Limits && MayBeLifted;
}

/// <summary>What a rule does to a day.</summary>
public enum Effect
{
    /// <summary>No work.</summary>
    Closes,

    /// <summary>Work goes on under a named measure.</summary>
    Limits,

    /// <summary>The day is better than others.</summary>
    Favours,

    /// <summary>Adds an item of equipment or care.</summary>
    Requires,

    /// <summary>Takes away what a rule of a higher pack says.</summary>
    Lifts,
}

/// <summary>How binding a rule is.</summary>
public enum Authority
{
    Regulation,
    AgencyGuideline,
    PublishedStudy,
    CommonPractice,
}

/// <summary>Where a rule is stated.</summary>
/// <param name="Title">The document.</param>
/// <param name="Year">Its year, or null where none is printed.</param>
/// <param name="Where">Paragraph or page, or null.</param>
/// <param name="Address">Where it can be read, or null.</param>
public sealed record RuleSource(string Title, int? Year, string? Where, string? Address);

/// <summary>The years that a rule is known to be valid for, both included; null leaves that end open.</summary>
public sealed record ValidYears(int? From, int? To)
{
    /// <summary>Whether all of them lie before a year.</summary>
    public bool AreOverIn(int year) => To < year;
}

/// <summary>
/// The tasks that a rule speaks of. Each part that names something must match; a part that is empty matches all.
/// </summary>
/// <param name="Practices">Keys of practices.</param>
/// <param name="Traits">The practice has at least one of these traits.</param>
/// <param name="States">Two-letter postal codes.</param>
/// <param name="Counties">Five-digit county FIPS codes.</param>
/// <param name="SpeciesGroups">The parcel's stand has a species of at least one of these groups.</param>
/// <param name="SiteFlags">The parcel has at least one of these flags.</param>
/// <param name="Organizations">Names of organizations.</param>
/// <param name="Area">The parcel's place lies in this area; null for everywhere.</param>
public sealed record Scope(
    ImmutableSortedSet<string> Practices,
    PracticeTraits Traits,
    ImmutableSortedSet<string> States,
    ImmutableSortedSet<string> Counties,
    ImmutableSortedSet<SpeciesGroup> SpeciesGroups,
    ImmutableSortedSet<SiteFlag> SiteFlags,
    ImmutableSortedSet<string> Organizations,
    Area? Area);
