using System.Collections.Immutable;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Simulation;

/// <summary>How crews choose their work.</summary>
public enum Strategy
{
    /// <summary>A plan by chances, made anew each week and whenever a day is lost.</summary>
    Planned,

    /// <summary>Each morning the first task of the list that may be worked.</summary>
    FirstCome,

    /// <summary>Each morning the task that may be worked and has the earliest deadline.</summary>
    EarliestDeadline,
}

/// <summary>What a season came to.</summary>
/// <param name="Benefit">Points of the tasks that were done whole and in time.</param>
/// <param name="Done">How many tasks were done.</param>
/// <param name="CrewDays">How many days crews worked.</param>
/// <param name="TravelHours">How long they drove.</param>
public sealed record SeasonResult(double Benefit, int Done, int CrewDays, double TravelHours);

/// <summary>
/// Plays a season day by day as it really was: in the morning it is known whether the day can be worked, and of the days
/// to come only the chances.
/// </summary>
/// <remarks>Source: docs/rules/crew-plans.md.</remarks>
public static class SeasonSimulation
{
    /// <param name="plan">The case, with the chances that were known before the season.</param>
    /// <param name="workable">For each task of the case: which days of it could be worked in truth.</param>
    /// <param name="strategy">How crews choose.</param>
    /// <param name="limits">How long a plan is searched for each time.</param>
    public static SeasonResult Play(
        PlanCase plan, ImmutableArray<ImmutableArray<bool>> workable, Strategy strategy, PlanLimits limits)
    {
        var season = new PlayedSeason(plan, workable);
        IMorning morning = strategy switch
        {
            Strategy.Planned => new PlannedMorning(limits),
            Strategy.FirstCome => new ListedMorning(tasks => tasks),
            Strategy.EarliestDeadline => new ListedMorning(tasks => tasks.OrderBy(
                task => task.Deadline ?? NodaTime.LocalDate.MaxIsoValue)),
        };
        for (var day = 0; day < plan.Days.Length; day++)
            season.Work(morning.Choose(season, day));
        return season.Result;
    }
}

/// <summary>Chooses what crews do today.</summary>
internal interface IMorning
{
    IReadOnlyList<Booking> Choose(PlayedSeason season, int day);
}
