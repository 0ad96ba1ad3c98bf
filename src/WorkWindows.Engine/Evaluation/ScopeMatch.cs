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
    /// has not been inventoried, where the parcel lies, or who plans the task.
    /// </returns>
    public static Truth Of(Scope scope, TaskFacts facts)
    {
        var matches = Allows(scope.Practices, facts.Practice.Id)
            && (scope.Traits == PracticeTraits.None || (scope.Traits & facts.Practice.Traits) != 0)
            && SpeaksOf(scope, facts.State, facts.CountyFips)
            && (scope.SiteFlags.IsEmpty || scope.SiteFlags.Overlaps(facts.SiteFlags));
        if (!matches)
            return Truth.Fails;
        var truth = Truth.Holds;
        foreach (var part in (ReadOnlySpan<Truth>)[Species(scope, facts), Inside(scope, facts), Planned(scope, facts)])
        {
            if (part == Truth.Fails)
                return Truth.Fails;
            if (part == Truth.Unknown)
                truth = Truth.Unknown;
        }
        return truth;
    }

    /// <summary>Whether a scope leaves room for anything in a county, whatever the work and the parcel are.</summary>
    /// <param name="scope">The scope of a rule.</param>
    /// <param name="state">Two-letter postal code.</param>
    /// <param name="countyFips">The county's five digits.</param>
    public static bool SpeaksOf(Scope scope, string state, string countyFips) =>
        Allows(scope.States, state) && Allows(scope.Counties, countyFips);

    private static Truth Planned(Scope scope, TaskFacts facts) =>
        scope.Organizations.IsEmpty ? Truth.Holds
        : facts.Organization is not { } organization ? Truth.Unknown
        : Known(scope.Organizations.Contains(organization));

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
