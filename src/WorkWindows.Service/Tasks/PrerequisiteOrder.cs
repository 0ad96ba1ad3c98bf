namespace WorkWindows.Service.Tasks;

/// <summary>Whether every task can come to its turn.</summary>
internal static class PrerequisiteOrder
{
    /// <param name="prerequisites">For each task those that must be done before it.</param>
    /// <param name="start">The task to begin from.</param>
    /// <returns>The way from the task over its prerequisites back to itself, or null where there is none.</returns>
    public static IReadOnlyList<T>? CircleThrough<T>(ILookup<T, T> prerequisites, T start) where T : notnull
    {
        var cameFrom = new Dictionary<T, T>();
        var open = new Queue<T>([start]);
        while (open.TryDequeue(out var task))
        {
            foreach (var earlier in prerequisites[task])
            {
                if (earlier.Equals(start))
                    return [.. Way(cameFrom, start, task), start];
                if (cameFrom.TryAdd(earlier, task))
                    open.Enqueue(earlier);
            }
        }
        return null;
    }

    private static List<T> Way<T>(Dictionary<T, T> cameFrom, T start, T end) where T : notnull
    {
        var way = new List<T> { end };
        while (!way[^1].Equals(start))
            way.Add(cameFrom[way[^1]]);
        way.Reverse();
        return way;
    }
}
