using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Whether a rule speaks of a task.</summary>
public static class ScopeMatch
{
    /// <returns>
    /// Unknown when all else matches but the parcel's stand has not been inventoried and the rule asks for species.
    /// </returns>
    public static Truth Of(Scope scope, TaskFacts facts)
    {
        var matches = Allows(scope.Practices, facts.Practice.Id)
            && (scope.Traits == PracticeTraits.None || (scope.Traits & facts.Practice.Traits) != 0)
            && Allows(scope.States, facts.State)
            && Allows(scope.Counties, facts.CountyFips)
            && (scope.SiteFlags.IsEmpty || scope.SiteFlags.Overlaps(facts.SiteFlags));
        if (!matches)
            return Truth.Fails;
        if (scope.SpeciesGroups.IsEmpty)
            return Truth.Holds;
        if (facts.SpeciesGroups is not { } present)
            return Truth.Unknown;
        return scope.SpeciesGroups.Overlaps(present) ? Truth.Holds : Truth.Fails;
    }

    private static bool Allows(ImmutableSortedSet<string> named, string value) =>
        named.IsEmpty || named.Contains(value);
}
