using System.Collections.Immutable;
using System.Globalization;
using WorkWindows.Planning.Seasons;
using WorkWindows.Tests;

namespace WorkWindows.Planning.Tests.Seasons;

/// <summary>Reads a single-mode project of PSPLIB (Kolisch and Sprecher 1996, European Journal of Operational Research 96).</summary>
internal static class PsplibProject
{
    private static readonly char[] Blanks = [' ', '\t'];

    public static SeasonProblem Read(string name)
    {
        var lines = File.ReadAllLines(ProjectFiles.Reference($"sched/rcpsp/{name}"));
        var slots = Numbers(lines.First(line => line.StartsWith("horizon", StringComparison.Ordinal)).Split(':')[1])[0];
        var order = After(lines, "PRECEDENCE RELATIONS", 2).Select(Numbers).ToArray();
        var work = After(lines, "REQUESTS/DURATIONS", 3).Select(Numbers).ToArray();
        var capacity = Numbers(After(lines, "RESOURCEAVAILABILITIES", 2).First());
        var followers = order.Select(row => row[3..].Select(job => job - 1).ToArray()).ToArray();
        var jobs = work.Length;
        var (earliest, tail) = (new int[jobs], new int[jobs]);
        for (var job = 0; job < jobs; job++)
        {
            foreach (var next in followers[job])
                earliest[next] = Math.Max(earliest[next], earliest[job] + work[job][2]);
        }
        for (var job = jobs - 1; job >= 0; job--)
            tail[job] = work[job][2] + followers[job].Select(next => tail[next]).DefaultIfEmpty(0).Max();
        return new(
            slots,
            [
                .. Enumerable.Range(0, jobs).Select(job => new Activity(
                    [.. Enumerable.Range(earliest[job], slots - tail[job] - earliest[job] + 1).Select(start => Way(work[job], start))],
                    [.. Enumerable.Range(0, jobs).Where(first => followers[first].Contains(job))], MayBeLeftOut: false)),
            ],
            [.. capacity.Select(amount => new Resource([.. Enumerable.Repeat(amount, slots)]))]);
    }

    public static ImmutableDictionary<string, int> Optima() => File
        .ReadLines(ProjectFiles.Reference("sched/rcpsp/optimum.csv")).Select(line => line.Split(','))
        .Where(row => int.TryParse(row[1], CultureInfo.InvariantCulture, out _))
        .ToImmutableDictionary(row => row[0], row => int.Parse(row[1], CultureInfo.InvariantCulture));

    private static Option Way(int[] row, int start) => new(
        start, start + row[2], 0,
        [
            .. Enumerable.Range(start, row[2]).SelectMany(slot => row[3..].Select((amount, resource) => (slot, resource, amount)))
                .Where(use => use.amount > 0).Select(use => new Use(use.resource, use.slot, use.amount)),
        ]);

    private static IEnumerable<string> After(string[] lines, string title, int skip) =>
        lines.SkipWhile(line => !line.StartsWith(title, StringComparison.Ordinal)).Skip(skip)
            .TakeWhile(line => !line.StartsWith('*'));

    private static int[] Numbers(string line) =>
        [.. line.Split(Blanks, StringSplitOptions.RemoveEmptyEntries).Select(word => int.Parse(word, CultureInfo.InvariantCulture))];
}
