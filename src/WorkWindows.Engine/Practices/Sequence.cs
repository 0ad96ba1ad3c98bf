using System.Collections.Immutable;

namespace WorkWindows.Engine.Practices;

/// <summary>Work that comes before other work on the same land.</summary>
/// <param name="First">What is done first.</param>
/// <param name="Later">What follows.</param>
/// <param name="Because">Why, in a sentence.</param>
public sealed record Order(Practice First, Practice Later, string Because);

/// <summary>
/// The order of work on a parcel. Common practice, no source, save that hinges die without light (docs/rules/stands.md).
/// </summary>
public static class Sequence
{
    public static ImmutableArray<Order> All { get; } =
    [
        Of("overstory-felling", "hinge-cut", "Hinged stems live on light: what shades them is felled first."),
        Of("overstory-felling", "cleanup", "There is nothing to clear before the trees are down."),
        Of("overstory-felling", "conifer-underplanting", "Trees that are felled later fall on what was planted."),
        Of("timber-harvest", "hinge-cut", "Machines run over what was hinged before them."),
        Of("timber-harvest", "conifer-underplanting", "Machines run over what was planted before them."),
        Of("cleanup", "hinge-cut", "Nothing that was felled is left overhead of whoever hinges."),
        Of("trail-opening", "hinge-cut", "The way out is open before stems hang over it."),
        Of("hinge-cut", "tie-down", "There is nothing to tie down before it is hinged."),
        Of("hinge-cut", "re-cut", "There is nothing to cut again before it is hinged."),
    ];

    /// <summary>What stands against doing work on a parcel now: other work there that comes first and is not done.</summary>
    /// <param name="later">What is to be done.</param>
    /// <param name="open">What else is planned on the parcel and not done.</param>
    public static IEnumerable<Order> Before(Practice later, IEnumerable<Practice> open) =>
        All.Where(order => order.Later == later && open.Contains(order.First));

    private static Order Of(string first, string later, string because) =>
        new(PracticeCatalogue.Find(first)!, PracticeCatalogue.Find(later)!, because);
}
