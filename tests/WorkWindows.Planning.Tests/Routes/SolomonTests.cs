using System.Globalization;
using Shouldly;
using WorkWindows.Planning.Routes;
using WorkWindows.Tests;

namespace WorkWindows.Planning.Tests.Routes;

/// <summary>
/// The clustered instances of M. M. Solomon, Algorithms for the Vehicle Routing and Scheduling Problems with Time Window
/// Constraints, Operations Research 35, 1987, with the best known distances in real-valued Euclidean metric.
/// </summary>
public sealed class SolomonTests(ITestOutputHelper output)
{
    private static readonly char[] Blanks = [' ', '\t'];

    public static TheoryData<string, double> BestKnown()
    {
        var data = new TheoryData<string, double>();
        foreach (var row in File.ReadLines(ProjectFiles.Reference("sched/vrptw/best-known.csv")).Skip(1).Select(line => line.Split(',')))
            data.Add(row[0], double.Parse(row[2], CultureInfo.InvariantCulture));
        return data;
    }

    [Theory, MemberData(nameof(BestKnown))]
    public void Solve_ComesWithinOnePercentOfTheBestKnownDistance_InAMinute(string instance, double bestKnown)
    {
        var problem = Read(instance);

        var found = RouteModel.Solve(problem, seconds: 60, enough: bestKnown * 1.009)!;

        output.WriteLine($"{instance}: {found.Travel:0.00} of {bestKnown}");
        found.Travel.ShouldBeLessThanOrEqualTo(bestKnown * 1.01);
        found.Tours.SelectMany(tour => tour).Order().ShouldBe(Enumerable.Range(1, problem.Stops.Length - 1));
        foreach (var tour in found.Tours)
            Keep(problem, tour);
    }

    private static void Keep(RouteProblem problem, IReadOnlyList<int> tour)
    {
        var (time, at) = (problem.Stops[0].Ready, 0);
        foreach (var stop in tour.Append(0))
        {
            time = Math.Max(time + problem.Stops[at].Service + problem.Travel[at][stop], problem.Stops[stop].Ready);
            time.ShouldBeLessThanOrEqualTo(problem.Stops[stop].Due);
            at = stop;
        }
        tour.Sum(stop => problem.Stops[stop].Demand).ShouldBeLessThanOrEqualTo(problem.Capacity);
    }

    private static RouteProblem Read(string instance)
    {
        var rows = File.ReadLines(ProjectFiles.Reference($"sched/vrptw/{instance}.txt"))
            .Select(line => line.Split(Blanks, StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length > 1 && words.All(word => int.TryParse(word, CultureInfo.InvariantCulture, out _)))
            .Select(words => words.Select(word => int.Parse(word, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var stops = rows[1..];
        return new(
            [.. stops.Select(row => new Stop(row[3], row[4], row[5], row[6]))],
            [
                .. stops.Select(from => stops.Select(to => Math.Sqrt(
                    Math.Pow(from[1] - to[1], 2) + Math.Pow(from[2] - to[2], 2))).ToArray())
                    .Select(row => System.Collections.Immutable.ImmutableArray.Create(row)),
            ],
            rows[0][0], rows[0][1]);
    }
}
