using System.Collections.Immutable;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Seasons;

namespace WorkWindows.Planning.Crews;

/// <summary>A case as the season model takes it: slots are days, crews are resources in minutes.</summary>
internal sealed class PlanProblem
{
    /// <summary>The solver counts in whole numbers: thousandths of a point.</summary>
    private const double Parts = 1_000;

    private const double MinutesPerHour = 60;

    /// <summary>With more ways than these a search looks only at those that are worth most: our own choice.</summary>
    private const int MostWays = 30_000;

    private readonly PlanCase plan;
    private readonly FixedWork fixedWork;
    private readonly Spacing spacing;
    private readonly PlanMarks marks;
    private readonly ILookup<(string TaskId, string CrewId), int> announced;
    private readonly Dictionary<string, int> told;

    public PlanProblem(PlanCase plan)
    {
        this.plan = plan;
        fixedWork = new(plan);
        spacing = Spacing.Of(plan);
        marks = new(plan, spacing, fixedWork, Whole);
        announced = Announced().ToLookup(booking => (booking.TaskId, booking.CrewId), booking => plan.IndexOf(booking.Day));
        told = Announced().GroupBy(booking => booking.TaskId).ToDictionary(
            task => task.Key, task => Math.Min(plan.Days.Length - 1, task.Max(booking => plan.IndexOf(booking.Day))));
        ImmutableArray<ImmutableArray<TaskWay>> ways =
            [.. plan.Tasks.Select((task, index) => WaysOf(task, index).ToImmutableArray())];
        var prices = DayPrices.Of(plan, fixedWork, ways, PointsOf);
        IsWhole = ways.Sum(task => task.Length) <= MostWays;
        Ways = IsWhole
            ? ways
            : [.. Enumerable.Range(0, ways.Length).Select(task => prices.Best(task, MostWays / ways.Length))];
        ImmutableArray<Activity> activities = [.. plan.Tasks.Select(ActivityOf)];
        Season = new(
            plan.Days.Length, activities, [.. CrewMinutes(), .. marks.EquipmentPools()], marks.Marks, marks.Exclusive,
            marks.Costs);
        Constant = -plan.Weights.PointsPerChange * Announced().Count();
        Bound = prices.Bound + Constant;
    }

    /// <summary>Whether work of a task is set to a day on which it may not be worked.</summary>
    public bool IsOnClosedDay(string taskId) => fixedWork.IsOnClosedDay(taskId);

    /// <summary>Whether every way is looked at.</summary>
    public bool IsWhole { get; }

    /// <summary>No plan that is made of such ways has more points, whichever of them are looked at.</summary>
    public double Bound { get; }

    /// <summary>The ways of each task that do not stand against what is fixed, or the best of them.</summary>
    public ImmutableArray<ImmutableArray<TaskWay>> Ways { get; }

    public SeasonProblem Season { get; }

    /// <summary>Points that count whatever is planned: what it would cost to keep nothing that was announced.</summary>
    public double Constant { get; }

    public double Points(double parts) => parts / Parts + Constant;

    private static long Whole(double points) => (long)Math.Round(points * Parts);

    /// <summary>Announced days that are not fixed, of work that is not all fixed.</summary>
    private IEnumerable<Booking> Announced() => plan.Announced.Where(booking =>
        !fixedWork.Has(booking.TaskId, booking.Day)
        && !fixedWork.IsWhole(plan.Tasks.First(task => task.Id == booking.TaskId)));

    private IEnumerable<TaskWay> WaysOf(PlanTask task, int index)
    {
        var hours = task.Hours - fixedWork.HoursOf(task);
        return hours <= 0 || fixedWork.IsWhole(task) || task.After.Any(fixedWork.IsOnClosedDay)
            ? []
            : TaskWays.Of(plan, index, hours, (crew, day) => fixedWork.Allows(task, crew, day));
    }

    private Activity ActivityOf(PlanTask task, int index)
    {
        var (first, last) = fixedWork.SpanOf(task.Id);
        // What is fixed stays, whatever comes before it.
        if (fixedWork.IsWhole(task))
            return new([new(first, last + 1, 0, [])], [], MayBeLeftOut: false);
        ImmutableArray<int> after = [.. task.After.Select(id => plan.Tasks.IndexOf(plan.Tasks.First(one => one.Id == id)))];
        return new([.. Ways[index].Select(way => OptionOf(task, way, last))], after, MayBeLeftOut: true);
    }

    private Option OptionOf(PlanTask task, TaskWay way, int lastFixed) => new(
        way.Days[0], Math.Max(way.Days[^1], lastFixed) + 1, Whole(PointsOf(way)),
        [.. way.Days.Zip(way.Minutes, (day, minutes) => new Use(way.Crew, day, minutes))],
        [.. way.Days.SelectMany(day => marks.Of(way.Task, way.Crew, day))]);

    /// <summary>
    /// What a way brings: its part of the benefit, less for lateness, more for what it keeps of what was told. Of work that
    /// was told days earlier than those bring nothing, and days later count little, so that one move moves nobody else.
    /// </summary>
    private double PointsOf(TaskWay way)
    {
        var last = told.TryGetValue(plan.Tasks[way.Task].Id, out var day)
            ? day + Math.Max(0, way.Days[^1] - day) * plan.Weights.ToldLateShare
            : way.Days[^1];
        var late = plan.Days.Length > 1 ? last / (plan.Days.Length - 1) : 0;
        var kept = announced[(plan.Tasks[way.Task].Id, plan.Crews[way.Crew].Id)].Count(way.Days.Contains);
        return plan.Tasks[way.Task].Benefit * way.MeanChance * (1 - plan.Weights.LateShare * late)
            + plan.Weights.PointsPerChange * kept;
    }

    /// <summary>What is left of each crew's days.</summary>
    private IEnumerable<Resource> CrewMinutes() => plan.Crews.Select(crew => new Resource(
    [
        .. Enumerable.Range(0, plan.Days.Length).Select(plan.DayAt)
            .Select(day => Math.Max(0, (int)Math.Floor(crew.HoursPerDay * MinutesPerHour) - fixedWork.MinutesOn(crew, day))),
    ]));
}
