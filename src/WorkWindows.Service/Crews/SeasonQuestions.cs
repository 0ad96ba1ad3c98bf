using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Planning;
using WorkWindows.Planning.Simulation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>How many crew days there are in a stretch of days.</summary>
/// <param name="Years">The years counted.</param>
/// <param name="InEightOfTen">As many or more in eight of ten years.</param>
/// <param name="InHalf">As many or more in half of them.</param>
/// <param name="Least">In the worst of them.</param>
/// <param name="Most">In the best.</param>
public sealed record CrewDaysAnswer(int Years, int InEightOfTen, int InHalf, int Least, int Most);

/// <summary>What a season brings, as crews are and with one of them from a later day on.</summary>
/// <param name="Years">The years played.</param>
/// <param name="AsItIs">Points in the mean.</param>
/// <param name="Otherwise">Points in the mean with the change.</param>
/// <param name="LostInHalf">Points lost or more in half of the years.</param>
/// <param name="LostInOneOfTen">Points lost or more in one year of ten.</param>
public sealed record LaterCrewAnswer(int Years, double AsItIs, double Otherwise, double LostInHalf, double LostInOneOfTen);

/// <summary>Answers before the season, from what past years made of the days to come.</summary>
public sealed class SeasonQuestions(PlanReader reader)
{
    /// <summary>Played within the time that somebody waits at a page.</summary>
    private const int YearsPlayed = 12;

    private static readonly PlanLimits Limits = new() { Workers = 1, Effort = 0.02, Seconds = 5 };

    /// <summary>Crew days from one day to another, or to leaf-out.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day; leaf-out ends it earlier where asked for.</param>
    /// <param name="untilLeafOut">Whether days from leaf-out on do not count.</param>
    /// <param name="properties">The properties; none for all.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>Null where there are no tasks, no crews or too few past years.</returns>
    public async Task<CrewDaysAnswer?> CrewDaysAsync(
        LocalDate from, LocalDate to, bool untilLeafOut, IReadOnlySet<Guid> properties, CancellationToken cancellation)
    {
        var input = await reader.ReadAsync(DaySpan.Between(from, to), cancellation);
        TaskInput[] tasks =
        [
            .. input.Tasks.Values.Where(task => (properties.Count == 0 || properties.Contains(task.Task.PropertyId))
                && !task.Weather.Chances.Ensemble.Years.IsEmpty),
        ];
        if (tasks.Length == 0 || input.Crews.Count == 0)
            return null;
        var days = new DaySpan(from, Period.DaysBetween(from, to) + 1);
        TaskPast[] pasts = [.. tasks.Select(task => new TaskPast(task, days))];
        var years = Years(tasks);
        int[] crewsOn = [.. Enumerable.Range(0, days.Count).Select(day => input.Case.Crews.Count(crew => crew.WorksOn(days[day])))];
        var counted = CrewDays.Of(
            [.. years.Select(year => pasts.Select(task => task.Workable(year, untilLeafOut)).ToImmutableArray())], crewsOn);
        return counted.IsEmpty
            ? null
            : new(
                counted.Length, CrewDays.AtLeastIn(counted, 0.8), CrewDays.AtLeastIn(counted, 0.5), counted.Min(), counted.Max());
    }

    /// <summary>What is lost when a crew begins on a later day.</summary>
    /// <param name="from">The first day of the season; today or later.</param>
    /// <param name="to">The last.</param>
    /// <param name="crewId">The crew.</param>
    /// <param name="begins">The day on which it begins.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>Null where there is no such crew, or too few past years.</returns>
    public async Task<LaterCrewAnswer?> LaterCrewAsync(
        LocalDate from, LocalDate to, Guid crewId, LocalDate begins, CancellationToken cancellation)
    {
        var input = await reader.ReadAsync(DaySpan.Between(from, to), cancellation);
        if (!input.Crews.ContainsKey(crewId) || input.Tasks.Count == 0
            || input.Tasks.Values.Any(task => task.Weather.Chances.Ensemble.Years.IsEmpty))
        {
            return null;
        }
        var asItIs = input.Case with { Announced = [], Fixed = [] };
        var later = asItIs with
        {
            Crews = [.. asItIs.Crews.Select(crew => crew.Id == $"{crewId}"
                ? crew with { FirstDay = LocalDate.Max(begins, crew.FirstDay ?? begins) }
                : crew)],
        };
        var days = new DaySpan(from, input.Case.Days.Length);
        TaskInput[] tasks = [.. input.Case.Tasks.Select(task => input.Tasks[Guid.Parse(task.Id)])];
        TaskPast[] pasts = [.. tasks.Select(task => new TaskPast(task, days))];
        var played = Years(tasks).TakeLast(YearsPlayed).AsParallel().AsOrdered().WithCancellation(cancellation).Select(year =>
        {
            ImmutableArray<ImmutableArray<bool>> truth = [.. pasts.Select(task => task.Workable(year, untilLeafOut: false))];
            return (
                AsItIs: SeasonSimulation.Play(asItIs, truth, Strategy.Planned, Limits).Benefit,
                Later: SeasonSimulation.Play(later, truth, Strategy.Planned, Limits).Benefit);
        }).ToList();
        var lost = played.ConvertAll(year => year.AsItIs - year.Later);
        return played.Count == 0
            ? null
            : new(
                played.Count, played.Average(year => year.AsItIs), played.Average(year => year.Later), Quantile.Of(lost, 0.5),
                Quantile.Of(lost, 0.9));
    }

    /// <summary>The years that tell all of the tasks, the oldest first.</summary>
    private static IReadOnlyList<int> Years(IEnumerable<TaskInput> tasks) =>
        [.. tasks.Select(task => task.Weather.Chances.Ensemble.Years.AsEnumerable()).Aggregate((all, more) => all.Intersect(more)).Order()];

    /// <summary>What past years make of a task's days.</summary>
    private sealed class TaskPast(TaskInput task, DaySpan days)
    {
        private readonly TaskChances chances = task.ChancesOf(days);

        /// <summary>Whether each day could be worked had the weather gone on as in a past year; unknown days could not.</summary>
        public ImmutableArray<bool> Workable(int year, bool untilLeafOut)
        {
            var member = chances.Years.IndexOf(year);
            var workable = chances.Members[member].Workable;
            var leafOut = untilLeafOut ? LeafOut(task.Weather.Chances.Ensemble.Members[member]) : null;
            return [.. Enumerable.Range(0, days.Count).Select(day => workable[day] && !(days[day] >= leafOut))];
        }

        private LocalDate? LeafOut(SignalSet member) => member.Events
            .Where(one => one.Kind == SeasonEventKind.LeafOut && one.Date >= days.First)
            .Select(one => (LocalDate?)one.Date).Min();
    }
}
