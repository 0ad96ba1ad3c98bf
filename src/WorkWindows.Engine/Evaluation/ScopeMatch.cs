using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Whether a rule speaks of a task.</summary>
public static class ScopeMatch
{
    /// <returns>
    /// Unknown when all else matches but the rule asks for something that nobody has said: the species of a stand that
    /// has not been inventoried, or where the parcel lies.
    /// </returns>
    public static Truth Of(Scope scope, TaskFacts facts)
    {
        var matches = Allows(scope.Practices, facts.Practice.Id)
            && (scope.Traits == PracticeTraits.None || (scope.Traits & facts.Practice.Traits) != 0)
            && Allows(scope.States, facts.State)
            && Allows(scope.Counties, facts.CountyFips)
            && (scope.SiteFlags.IsEmpty || scope.SiteFlags.Overlaps(facts.SiteFlags))
            && (scope.Organizations.IsEmpty
                || facts.Organization is { } organization && scope.Organizations.Contains(organization));
        var (species, area) = (Species(scope, facts), Inside(scope, facts));
        return !matches || species == Truth.Fails || area == Truth.Fails ? Truth.Fails
            : species == Truth.Unknown || area == Truth.Unknown ? Truth.Unknown
            : Truth.Holds;
    }

    private static Truth Species(Scope scope, TaskFacts facts) =>
        scope.SpeciesGroups.IsEmpty ? Truth.Holds
        : facts.SpeciesGroups is not { } present ? Truth.Unknown
        : Known(scope.SpeciesGroups.Overlaps(present));

    private static Truth Inside(Scope scope, TaskFacts facts) =>
        scope.Area is not { } area ? Truth.Holds
        : facts.Place is not { } place ? Truth.Unknown
        : Known(area.Contains(place));

    private static Truth Known(bool holds) => holds ? Truth.Holds : Truth.Fails;

    private static bool Allows(ImmutableSortedSet<string> named, string value) =>
        named.IsEmpty || named.Contains(value);
}
