using System.Collections.Immutable;
using Google.OrTools.ConstraintSolver;
using Google.Protobuf.WellKnownTypes;

namespace WorkWindows.Planning.Routes;

/// <summary>Orders stops so that the least time is driven, with the routing library of OR-Tools.</summary>
/// <remarks>Source: docs/rules/crew-plans.md.</remarks>
public static class RouteModel
{
    /// <summary>The library counts in whole numbers: a thousandth of the unit of travel is kept.</summary>
    private const double Parts = 1_000;

    /// <summary>
    /// Ways to find tours to begin from. Local search may be caught in one of them, so that several share the time.
    /// </summary>
    private static readonly ImmutableArray<FirstSolutionStrategy.Types.Value> Beginnings =
    [
        FirstSolutionStrategy.Types.Value.Savings, FirstSolutionStrategy.Types.Value.ParallelCheapestInsertion,
        FirstSolutionStrategy.Types.Value.PathCheapestArc, FirstSolutionStrategy.Types.Value.LocalCheapestInsertion,
    ];

    /// <param name="problem">The stops.</param>
    /// <param name="seconds">
    /// How long to search by the clock; 0 to go downhill only, which takes no time worth naming and always ends the same.
    /// </param>
    /// <param name="enough">Travel with which to stop searching; 0 to search to the end.</param>
    /// <returns>The best tours found; null when there are none, or none were found in time.</returns>
    public static RouteSolution? Solve(RouteProblem problem, double seconds, double enough = 0)
    {
        RouteSolution? best = null;
        foreach (var beginning in Beginnings)
        {
            if (Search(problem, beginning, seconds / Beginnings.Length, enough) is { } found
                && !(found.Travel >= best?.Travel))
            {
                best = found;
            }
            if (best?.Travel <= enough)
                break;
        }
        return best;
    }

    private static RouteSolution? Search(
        RouteProblem problem, FirstSolutionStrategy.Types.Value beginning, double seconds, double enough)
    {
        var count = problem.Stops.Length;
        using var manager = new RoutingIndexManager(count, problem.Vehicles, 0);
        using var routing = new RoutingModel(manager);
        var drive = Matrix(problem, (from, to) => problem.Travel[from][to]);
        var leave = Matrix(problem, (from, to) => problem.Stops[from].Service + problem.Travel[from][to]);
        routing.SetArcCostEvaluatorOfAllVehicles(routing.RegisterTransitMatrix(drive));
        AddTimes(problem, manager, routing, routing.RegisterTransitMatrix(leave));
        var demand = routing.RegisterUnaryTransitVector([.. problem.Stops.Select(stop => (long)stop.Demand)]);
        routing.AddDimension(demand, 0, problem.Capacity, true, "load");
        var parameters = operations_research_constraint_solver.DefaultRoutingSearchParameters();
        parameters.FirstSolutionStrategy = beginning;
        parameters.LocalSearchMetaheuristic = seconds > 0
            ? LocalSearchMetaheuristic.Types.Value.GuidedLocalSearch
            : LocalSearchMetaheuristic.Types.Value.GreedyDescent;
        if (seconds > 0)
            parameters.TimeLimit = Duration.FromTimeSpan(TimeSpan.FromSeconds(seconds));
        if (enough > 0)
        {
            routing.AddAtSolutionCallback(() =>
            {
                if (routing.CostVar().Min() <= enough * Parts)
                    routing.solver().FinishCurrentSearch();
            });
        }
        using var found = routing.SolveWithParameters(parameters);
        return found is null ? null : Read(problem, manager, routing, found);
    }

    private static void AddTimes(RouteProblem problem, RoutingIndexManager manager, RoutingModel routing, int leave)
    {
        var latest = Whole(problem.Stops.Max(stop => stop.Due + stop.Service) + problem.Travel.Max(row => row.Max()));
        routing.AddDimension(leave, latest, latest, false, "time");
        var time = routing.GetMutableDimension("time");
        for (var stop = 1; stop < problem.Stops.Length; stop++)
        {
            time.CumulVar(manager.NodeToIndex(stop)).SetRange(
                (long)Math.Ceiling(problem.Stops[stop].Ready * Parts), Whole(problem.Stops[stop].Due));
        }
        for (var vehicle = 0; vehicle < problem.Vehicles; vehicle++)
        {
            time.CumulVar(routing.Start(vehicle)).SetMin((long)Math.Ceiling(problem.Stops[0].Ready * Parts));
            time.CumulVar(routing.End(vehicle)).SetMax(Whole(problem.Stops[0].Due));
        }
    }

    private static RouteSolution Read(
        RouteProblem problem, RoutingIndexManager manager, RoutingModel routing, Assignment found)
    {
        var tours = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        for (var vehicle = 0; vehicle < problem.Vehicles; vehicle++)
        {
            var stops = ImmutableArray.CreateBuilder<int>();
            for (var at = found.Value(routing.NextVar(routing.Start(vehicle))); !routing.IsEnd(at);
                at = found.Value(routing.NextVar(at)))
            {
                stops.Add(manager.IndexToNode(at));
            }
            if (stops.Count > 0)
                tours.Add(stops.ToImmutable());
        }
        return new(tours.ToImmutable(), tours.Sum(tour => TravelOf(problem, tour)));
    }

    /// <summary>The time of a tour from the place that vehicles leave and back to it.</summary>
    public static double TravelOf(RouteProblem problem, IReadOnlyList<int> tour) =>
        tour.Prepend(0).Zip(tour.Append(0), (from, to) => problem.Travel[from][to]).Sum();

    private static long Whole(double time) => (long)Math.Floor(time * Parts);

    /// <summary>Rounded up, so that whoever keeps the rounded times keeps the true ones.</summary>
    private static long[][] Matrix(RouteProblem problem, Func<int, int, double> time) =>
    [
        .. Enumerable.Range(0, problem.Stops.Length).Select(from => Enumerable.Range(0, problem.Stops.Length)
            .Select(to => (long)Math.Ceiling(time(from, to) * Parts)).ToArray()),
    ];
}
