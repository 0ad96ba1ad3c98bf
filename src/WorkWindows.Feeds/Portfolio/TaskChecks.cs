namespace WorkWindows.Feeds.Portfolio;

/// <summary>What can be wrong between the tasks of a file.</summary>
internal static class TaskChecks
{
    public static void ReportRepeatedKeys(IEnumerable<ReadTask> tasks, FaultCollector faults)
    {
        foreach (var task in tasks.Where(task => task.Key is not null).GroupBy(task => task.Key))
        {
            foreach (var repeated in task.Skip(1))
            {
                faults.Add(repeated.Line, "task", repeated.Key!,
                    $"a key of its own: the task on line {task.First().Line} has it already", repeated.Key);
            }
        }
    }

    public static void ReportUnknownParcels(
        IEnumerable<ReadTask> tasks, IReadOnlySet<string> known, FaultCollector faults)
    {
        foreach (var task in tasks.Where(task => task.Parcel is not null && !known.Contains(task.Parcel)))
            faults.Add(task.Line, "parcel", task.Parcel!, "the key of a parcel that exists", task.Key);
    }

    public static void ReportUnknownPrerequisites(
        IReadOnlyCollection<ReadTask> tasks, IReadOnlySet<string> known, FaultCollector faults)
    {
        var inFile = tasks.Select(task => task.Key).ToHashSet();
        foreach (var task in tasks)
        {
            foreach (var unknown in task.Prerequisites.Where(key => !inFile.Contains(key) && !known.Contains(key)))
                faults.Add(task.Line, "prerequisites", unknown, "keys of tasks that exist, separated by ;", task.Key);
        }
    }

    /// <summary>Reports at least one circle of prerequisites if there is any, and none twice.</summary>
    public static void ReportCycles(IEnumerable<ReadTask> tasks, FaultCollector faults)
    {
        var waiting = tasks.Where(task => task.Key is not null)
            .GroupBy(task => task.Key!)
            .ToDictionary(task => task.Key, task => task.First());
        RemoveReachable(waiting);
        var visited = new HashSet<string>();
        foreach (var start in waiting.Keys)
        {
            var path = new List<string>();
            var key = start;
            for (; visited.Add(key); key = waiting[key].Prerequisites.First(waiting.ContainsKey))
                path.Add(key);
            if (path.IndexOf(key) is >= 0 and var at)
            {
                faults.Add(waiting[key].Line, "prerequisites", string.Join(" after ", path.Skip(at).Append(key)),
                    "prerequisites that do not lead back to the task itself", key);
            }
        }
    }

    /// <summary>Takes out every task whose turn can come; the others are on a circle or behind one.</summary>
    private static void RemoveReachable(Dictionary<string, ReadTask> waiting)
    {
        var followers = waiting.Values
            .SelectMany(task => task.Prerequisites.Where(waiting.ContainsKey), (task, earlier) => (earlier, task))
            .ToLookup(pair => pair.earlier, pair => pair.task.Key!);
        var open = waiting.ToDictionary(task => task.Key, task => task.Value.Prerequisites.Count(waiting.ContainsKey));
        var ready = new Queue<string>(open.Where(task => task.Value == 0).Select(task => task.Key));
        while (ready.TryDequeue(out var key))
        {
            waiting.Remove(key);
            foreach (var follower in followers[key])
            {
                if (--open[follower] == 0)
                    ready.Enqueue(follower);
            }
        }
    }
}
