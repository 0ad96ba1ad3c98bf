using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Engine.Practices;

/// <summary>Work that completed work asks for later.</summary>
/// <param name="After">The practice that was completed.</param>
/// <param name="Practice">The practice that it asks for.</param>
/// <param name="FromYears">Years after which it may be done.</param>
/// <param name="ToYears">Years by which it should be done.</param>
/// <param name="Because">What is lost without it, in a sentence.</param>
public sealed record FollowUp(Practice After, Practice Practice, int FromYears, int ToYears, string Because)
{
    /// <summary>
    /// What the practices ask for. Common practice, no source: hinged stems are bent further down while they are still
    /// supple, and cut again once their browse has grown out of reach.
    /// </summary>
    public static ImmutableArray<FollowUp> All { get; } =
    [
        Of("hinge-cut", "tie-down", 1, 2, "Hinged stems stand up again unless they are tied down."),
        Of("hinge-cut", "re-cut", 3, 4, "Shoots of hinged stems grow out of reach of deer unless they are cut again."),
        Of("re-cut", "re-cut", 3, 4, "Shoots of hinged stems grow out of reach of deer unless they are cut again."),
    ];

    /// <summary>The first and the last day of its time after work that was completed on a day.</summary>
    public (LocalDate From, LocalDate To) Due(LocalDate completedOn) =>
        (completedOn.PlusYears(FromYears), completedOn.PlusYears(ToYears));

    private static FollowUp Of(string after, string practice, int fromYears, int toYears, string because) => new(
        PracticeCatalogue.Find(after)!, PracticeCatalogue.Find(practice)!, fromYears, toYears, because);
}
