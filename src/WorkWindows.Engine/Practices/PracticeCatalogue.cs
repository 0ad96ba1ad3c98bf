using System.Collections.Immutable;
using static WorkWindows.Engine.Practices.PracticeTraits;

namespace WorkWindows.Engine.Practices;

/// <summary>The kinds of work that can be planned.</summary>
public static class PracticeCatalogue
{
    private const PracticeTraits SawCut = FellsTrees | WoundsTrees | ChainSaw;

    public static ImmutableArray<Practice> All { get; } =
    [
        new("overstory-felling", "Overstory felling", SawCut),
        new("hinge-cut", "Hinge cut", SawCut),
        new("re-cut", "Re-cut of hinged stems", SawCut),
        new("tie-down", "Tie-down of hinged stems", None),
        new("cleanup", "Cleanup of felled tops", ChainSaw),
        new("trail-opening", "Trail opening", WoundsTrees | ChainSaw),
        new("timber-harvest", "Timber harvest", SawCut | MachineOnSoil),
        new("girdling", "Girdling", WoundsTrees | ChainSaw),
        new("frill-herbicide", "Frill herbicide", WoundsTrees | Herbicide),
        new("conifer-underplanting", "Conifer underplanting", Planting),
        new("prescribed-burn", "Prescribed burn", Fire),
    ];

    /// <returns>The practice, or null if the catalogue has no such key.</returns>
    public static Practice? Find(string id) => All.FirstOrDefault(practice => practice.Id == id);
}
