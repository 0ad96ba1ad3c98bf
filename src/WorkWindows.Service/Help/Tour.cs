using NodaTime;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Help;

/// <summary>Where a tour stops.</summary>
/// <param name="Title">What is shown there.</param>
/// <param name="Says">What to look at.</param>
/// <param name="Address">The page, on the land that there is.</param>
public sealed record TourStep(string Title, string Says, Func<TourPlaces, string> Address);

/// <summary>What a tour shows things on.</summary>
/// <param name="Today">The day it is.</param>
/// <param name="Workable">A task that may be done today, else any; null without tasks.</param>
/// <param name="Closed">A task that is closed today, else any.</param>
public sealed record TourPlaces(LocalDate Today, OutlookRow? Workable, OutlookRow? Closed);

/// <summary>The stops of a tour, in order. It works on any land, and is meant for the invented one of the demo.</summary>
public static class Tour
{
    public static IReadOnlyList<TourStep> Steps { get; } =
    [
        new("The morning", "The first sentence answers the day: what may be done, and of what nothing is known. What changed overnight is below.",
            _ => "/morning"),
        new("A day that is closed", "The big mark says no, and each reason names its rule and where that is stated. Press a rule's name to read more.",
            places => places.Closed is { } task ? DayWords.AddressOf(task.Id, places.Today) : "/week"),
        new("A season", "A year of one task: what may be done when, which rules make it so, and from today on the chances that past years give.",
            places => places.Workable is { } task ? $"/tasks/{task.Id}" : "/week"),
        new("The map", "The same day on the land. Press a property to come closer, and draw its boundaries.", _ => "/map"),
        new("The board", "Who works where on which day. Drag a card: what stands against a day is said before anything is changed.", _ => "/board"),
        new("A plan", "Propose one: it says what changes, what is left out and why. Nobody is told before you publish it.", _ => "/plan"),
        new("A checklist", "What a crew wears, carries and does on that day. It is signed on the phone, without a network too.",
            places => places.Workable is { } task ? $"/tasks/{task.Id}/checklist" : "/week"),
        new("The review", "Months later: what was decided about a day, what was known then, and whether the same comes out again.", _ => "/review"),
    ];

    /// <returns>The stop that a page is shown for; null where it is not shown on a tour.</returns>
    public static (int Number, TourStep Step)? At(string? number) =>
        int.TryParse(number, out var asked) && asked >= 1 && asked <= Steps.Count ? (asked, Steps[asked - 1]) : null;
}
