using System.Collections.Immutable;

namespace WorkWindows.Planning.Routes;

/// <summary>A stop.</summary>
/// <param name="Demand">How much of what a vehicle carries it takes.</param>
/// <param name="Ready">The earliest time at which it may begin, in the unit of travel.</param>
/// <param name="Due">The latest time at which it may begin.</param>
/// <param name="Service">How long it takes.</param>
public sealed record Stop(int Demand, double Ready, double Due, double Service);

/// <summary>Stops to be made by vehicles that leave one place and come back to it.</summary>
/// <param name="Stops">The stops; the first is the place that vehicles leave.</param>
/// <param name="Travel">Time from stop to stop; a row for each stop.</param>
/// <param name="Vehicles">How many there are at most.</param>
/// <param name="Capacity">What each can carry.</param>
public sealed record RouteProblem(
    ImmutableArray<Stop> Stops, ImmutableArray<ImmutableArray<double>> Travel, int Vehicles, int Capacity);

/// <summary>Tours that make every stop once.</summary>
/// <param name="Tours">The stops of each vehicle that leaves, in order, without the place it leaves.</param>
/// <param name="Travel">The time that all of them drive.</param>
public sealed record RouteSolution(ImmutableArray<ImmutableArray<int>> Tours, double Travel);
