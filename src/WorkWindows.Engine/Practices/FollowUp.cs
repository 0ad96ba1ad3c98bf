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
    /// What the practices ask for, in the usual years. Common practice, no source: hinged stems are bent further down while they are still
    /// supple, and cut again once their browse has grown out of reach.
    /// </summary>
    public static ImmutableArray<FollowUp> All { get; } =
    [
        Of("hinge-cut", "tie-down", "Hinged stems stand up again unless they are tied down."),
        Of("hinge-cut", "re-cut", "Shoots of hinged stems grow out of reach of deer unless they are cut again."),
        Of("re-cut", "re-cut", "Shoots of hinged stems grow out of reach of deer unless they are cut again."),
    ];

    /// <summary>The first and the last day of its time after work that was completed on a day.</summary>
    public (LocalDate From, LocalDate To) Due(LocalDate completedOn) =>
        (completedOn.PlusYears(FromYears), completedOn.PlusYears(ToYears));

    /// <summary>The same with an organization's own years.</summary>
    public static ImmutableArray<FollowUp> With(FollowUpYears years) =>
        [.. All.Select(rule => rule with { FromYears = years.Of(rule.Practice).From, ToYears = years.Of(rule.Practice).To })];

    private static FollowUp Of(string after, string practice, string because)
    {
        var later = PracticeCatalogue.Find(practice)!;
        var (from, to) = new FollowUpYears().Of(later);
        return new(PracticeCatalogue.Find(after)!, later, from, to, because);
    }
}

/// <summary>Years after which follow-ups may be done, and by which they should be; without others the usual ones.</summary>
public sealed record FollowUpYears
{
    public int TieDownFrom { get; init; } = 1;
    public int TieDownTo { get; init; } = 2;
    public int ReCutFrom { get; init; } = 3;
    public int ReCutTo { get; init; } = 4;

    internal (int From, int To) Of(Practice practice) =>
        practice.Id == "tie-down" ? (TieDownFrom, TieDownTo) : (ReCutFrom, ReCutTo);
}
