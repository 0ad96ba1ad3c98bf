using System.Collections.Immutable;

namespace WorkWindows.Planning.Seasons;

/// <summary>
/// A plan to begin a search from: the activities one by one, those that bring most for what they take first, each in the
/// best way that is left.
/// </summary>
internal sealed class FirstPlan
{
    private readonly SeasonProblem problem;
    private readonly int[][] left;
    private readonly HashSet<Presence> set = [];
    private readonly ILookup<int, ImmutableArray<int>> exclusive;
    private readonly int?[] chosen;

    private FirstPlan(SeasonProblem problem)
    {
        this.problem = problem;
        left = [.. problem.Resources.Select(resource => resource.Capacity.ToArray())];
        exclusive = problem.Exclusive.SelectMany(marks => marks, (marks, mark) => (mark, marks))
            .ToLookup(one => one.mark, one => one.marks);
        chosen = new int?[problem.Activities.Length];
    }

    /// <returns>The option of each activity, or null where it is left out.</returns>
    public static ImmutableArray<int?> Of(SeasonProblem problem)
    {
        var plan = new FirstPlan(problem);
        var order = Enumerable.Range(0, problem.Activities.Length)
            .OrderByDescending(activity => plan.Density(activity)).ToList();
        // What comes later may only be placed after what comes first, so that it takes as many rounds as the longest chain.
        for (var placed = true; placed;)
        {
            placed = false;
            foreach (var activity in order.Where(activity => plan.chosen[activity] is null))
                placed |= plan.Place(activity);
        }
        return [.. plan.chosen];
    }

    private double Density(int activity) => problem.Activities[activity].Options
        .Select(option => option.Value / (1.0 + option.Uses.Sum(use => (double)use.Amount))).DefaultIfEmpty(0).Max();

    private bool Place(int activity)
    {
        var earliest = 0;
        foreach (var first in problem.Activities[activity].After)
        {
            if (chosen[first] is not { } option)
                return false;
            earliest = Math.Max(earliest, problem.Activities[first].Options[option].End);
        }
        var options = problem.Activities[activity].Options;
        var best = -1;
        var most = 0L;
        for (var option = 0; option < options.Length; option++)
        {
            if (options[option].Start < earliest || !Fits(options[option]))
                continue;
            var worth = options[option].Value - NewMarks(options[option]).Sum(mark => CostOf(mark.Mark));
            if (best < 0 || worth > most)
                (best, most) = (option, worth);
        }
        if (best < 0 || (most <= 0 && problem.Activities[activity].MayBeLeftOut))
            return false;
        Take(options[best]);
        chosen[activity] = best;
        return true;
    }

    private long CostOf(int mark) => problem.MarkCosts.IsEmpty ? 0 : problem.MarkCosts[mark];

    private IEnumerable<Presence> NewMarks(Option option) => option.Marks.Where(mark => !set.Contains(mark));

    private bool Fits(Option option)
    {
        if (NewMarks(option).Any(mark => exclusive[mark.Mark].Any(marks =>
            marks.Any(other => other != mark.Mark && set.Contains(new(other, mark.Slot))))))
        {
            return false;
        }
        return Needs(option).GroupBy(use => (use.Resource, use.Slot))
            .All(uses => uses.Sum(use => use.Amount) <= left[uses.Key.Resource][uses.Key.Slot]);
    }

    private IEnumerable<Use> Needs(Option option) => option.Uses.Concat(NewMarks(option).SelectMany(
        mark => problem.Marks[mark.Mark].UsesPerSlot.Select(use => new Use(use.Resource, mark.Slot, use.Amount))));

    private void Take(Option option)
    {
        foreach (var use in Needs(option).ToList())
            left[use.Resource][use.Slot] -= use.Amount;
        set.UnionWith(option.Marks);
    }
}
