using System.Collections.Immutable;

namespace WorkWindows.Planning.Simulation;

/// <summary>How many days crews could work in a stretch of past seasons.</summary>
public static class CrewDays
{
    /// <param name="workable">For each year, for each task, for each day: whether it could be worked.</param>
    /// <param name="crewsOn">How many crews work on each day.</param>
    /// <returns>For each year: crews times days on which at least one of the tasks could be worked.</returns>
    /// <exception cref="ArgumentException">A task has another number of days than there are.</exception>
    public static ImmutableArray<int> Of(
        IReadOnlyList<ImmutableArray<ImmutableArray<bool>>> workable, IReadOnlyList<int> crewsOn) =>
    [
        .. workable.Select(year => year.All(task => task.Length == crewsOn.Count)
            ? Enumerable.Range(0, crewsOn.Count).Where(day => year.Any(task => task[day])).Sum(day => crewsOn[day])
            : throw new ArgumentException($"Each task has {crewsOn.Count} days.", nameof(workable))),
    ];

    /// <summary>The number that is reached or exceeded in a share of the years.</summary>
    /// <param name="years">At least one.</param>
    /// <param name="share">Such as 0.8 for eight years of ten.</param>
    /// <exception cref="ArgumentException">There is no year, or the share is not above 0 and at most 1.</exception>
    public static int AtLeastIn(IReadOnlyCollection<int> years, double share)
    {
        if (years.Count == 0)
            throw new ArgumentException("There is no year.", nameof(years));
        if (share is not (> 0 and <= 1))
            throw new ArgumentException($"The share is {share}: give more than 0, at most 1.", nameof(share));
        // As many years as the share asks for, rounded up: they have this many or more.
        return years.OrderDescending().ElementAt((int)Math.Ceiling(share * years.Count - 1e-9) - 1);
    }
}
