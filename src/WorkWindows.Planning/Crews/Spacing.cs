using System.Collections.Immutable;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>
/// Which tasks two crews are never at on one day, as areas: tasks that are close to the same others are of one area.
/// </summary>
/// <param name="AreaOf">The area of each task of the case; null where it is close to no other.</param>
/// <param name="Pairs">Areas of which one crew at most is in either on a day; an area with itself where its tasks are close
/// to each other.</param>
internal sealed record Spacing(ImmutableArray<int?> AreaOf, ImmutableArray<(int First, int Second)> Pairs)
{
    public static Spacing Of(PlanCase plan)
    {
        var indexes = plan.Tasks.Select((task, index) => (task.Id, index)).ToDictionary(one => one.Id, one => one.index);
        var close = plan.Tasks.Select(_ => new SortedSet<int>()).ToArray();
        foreach (var (one, other) in plan.TooClose.Select(pair => (indexes[pair.TaskId], indexes[pair.OtherTaskId])))
        {
            if (one == other)
                continue;
            close[one].Add(other);
            close[other].Add(one);
        }
        var areas = Enumerable.Range(0, close.Length).Where(task => close[task].Count > 0)
            .GroupBy(task => string.Join(' ', close[task].Append(task).Order())).Select(tasks => tasks.ToArray()).ToArray();
        var areaOf = new int?[close.Length];
        for (var area = 0; area < areas.Length; area++)
        {
            foreach (var task in areas[area])
                areaOf[task] = area;
        }
        // Tasks of one area have the same neighbours, themselves included: those of its first are those of all.
        var pairs = areas.SelectMany((tasks, area) => close[tasks[0]].Select(other => areaOf[other]!.Value)
            .Where(other => other > area).Distinct().Select(other => (area, other))
            .Concat(tasks.Length > 1 ? [(area, area)] : []));
        return new([.. areaOf], [.. pairs]);
    }
}
