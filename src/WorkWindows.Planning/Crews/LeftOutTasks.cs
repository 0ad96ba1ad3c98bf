using System.Collections.Immutable;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>Says why tasks are left out.</summary>
internal static class LeftOutTasks
{
    public static ImmutableArray<LeftOut> Of(PlanCase plan, PlanProblem problem, ImmutableArray<TaskWay?> ways)
    {
        var done = plan.Tasks.Where((task, index) => ways[index] is not null || IsFixed(problem, index)).Select(task => task.Id)
            .ToHashSet();
        return
        [
            .. plan.Tasks.Select((task, index) => (task, index)).Where(one => !done.Contains(one.task.Id))
                .Select(one => Of(plan, problem, one.task, one.index, done)),
        ];
    }

    private static bool IsFixed(PlanProblem problem, int task) => !problem.Season.Activities[task].MayBeLeftOut;

    private static LeftOut Of(PlanCase plan, PlanProblem problem, PlanTask task, int index, HashSet<string> done)
    {
        if (task.After.FirstOrDefault(problem.IsOnClosedDay) is { } closed)
        {
            return new(
                task.Id, LeftOutBecause.WaitsForOther, $"It comes after {closed}, which is set to a day that is closed or not known.");
        }
        if (problem.Ways[index].IsEmpty)
            return Hindered(plan, task);
        if (task.After.FirstOrDefault(first => !done.Contains(first)) is { } first)
            return new(task.Id, LeftOutBecause.WaitsForOther, $"It comes after {first}, which is left out.");
        var best = problem.Season.Activities[index].Options.Max(option => option.Value - option.Marks.Sum(
            mark => problem.Season.MarkCosts.IsEmpty ? 0 : problem.Season.MarkCosts[mark.Mark]));
        if (best <= 0)
            return new(task.Id, LeftOutBecause.NotWorthIt, "It brings less than driving to it costs.");
        return task.After.IsEmpty
            ? new(task.Id, LeftOutBecause.CrewsFull, "The crews, people or machines that could do it have other work on its days, or work too close by.")
            : new(task.Id, LeftOutBecause.CrewsFull, "The crews, people or machines that could do it have other work, or what comes first ends too late.");
    }

    /// <summary>What stands against it nearest to its being done: on any day, by any crew.</summary>
    private static LeftOut Hindered(PlanCase plan, PlanTask task)
    {
        Hindrance? nearest = null;
        var possible = false;
        for (var day = plan.Days.Start; day <= plan.Days.End; day = day.PlusDays(1))
        {
            // Without a crew the task's own days still say something.
            if (plan.Crews.IsEmpty && plan.ChanceOf(task, day) is not null)
                return new(task.Id, LeftOutBecause.NoCrew, "There is no crew.");
            foreach (var crew in plan.Crews)
            {
                if (CrewDay.Of(plan, task, crew, day) is not { } hindrance)
                    possible = true;
                else if (nearest is null || hindrance > nearest)
                    nearest = hindrance;
            }
        }
        if (possible)
        {
            return new(task.Id, LeftOutBecause.TooLong,
                $"It takes {task.Hours:0.#} hours of a crew of the usual pace, more than its workable days that lie close together have, beside what is set.");
        }
        return nearest switch
        {
            Hindrance.TooEarly or Hindrance.TooLate => new(
                task.Id, LeftOutBecause.OutsideItsDates, $"Its workable days are {Outside(task)}."),
            Hindrance.CrewOff => new(task.Id, LeftOutBecause.NoCrew, "No crew works on its workable days."),
            Hindrance.TooFewPeople => new(
                task.Id, LeftOutBecause.TooFewPeople, $"No crew has {task.CrewSize} people on its workable days."),
            Hindrance.NoCertificate => new(
                task.Id, LeftOutBecause.NoCertificate,
                $"On its workable days no crew that is large enough has somebody with a valid certificate: {string.Join(", ", task.Skills)}."),
            Hindrance.NoEquipment => new(
                task.Id, LeftOutBecause.NoEquipment,
                $"On its workable days equipment is not to be had: {string.Join(", ", task.EquipmentKinds)}."),
            Hindrance.TooFar => new(
                task.Id, LeftOutBecause.TooFar, "The drive there and back leaves no time for the work."),
            _ => new(task.Id, LeftOutBecause.NoWorkableDay, "No day is workable as known now."),
        };
    }

    private static string Outside(PlanTask task) => (task.NotBefore, task.Deadline) switch
    {
        ({ } first, null) => $"before {first:R}, its first day",
        (null, { } last) => $"after {last:R}, its deadline",
        ({ } first, { } last) => $"not between {first:R} and {last:R}, its first day and its deadline",
        _ => "none",
    };
}
