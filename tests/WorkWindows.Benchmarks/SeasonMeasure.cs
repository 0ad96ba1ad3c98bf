using System.Globalization;
using WorkWindows.Engine.Climatology;
using WorkWindows.Planning;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Simulation;
using WorkWindows.Planning.Tests.Simulation;

namespace WorkWindows.Benchmarks;

/// <summary>What past seasons bring by plan, and by the two usual ways to choose work.</summary>
internal static class SeasonMeasure
{
    /// <summary>Points that an hour of driving costs: little, and the usual.</summary>
    private static readonly double[] TravelPoints = [0.2, new PlanWeights().PointsPerTravelHour];

    public static void Run(int firstYear, int lastYear)
    {
        var past = new PastSeasonCase(firstYear, lastYear);
        var limits = new PlanLimits { Workers = 1, Effort = 0.1, Seconds = 60 };
        Console.WriteLine($"{past.Years.Length} seasons, {firstYear} to {lastYear}");
        Tell(past, Strategy.FirstCome, limits, new());
        Tell(past, Strategy.EarliestDeadline, limits, new());
        foreach (var points in TravelPoints)
            Tell(past, Strategy.Planned, limits, new() { PointsPerTravelHour = points });
    }

    private static void Tell(PastSeasonCase past, Strategy strategy, PlanLimits limits, PlanWeights weights)
    {
        var played = past.Years.AsParallel().AsOrdered().Select(year => SeasonSimulation.Play(
            past.Of(year) with { Weights = weights }, past.Truth(year), strategy, limits)).ToList();
        var points = played.ConvertAll(season => season.Benefit);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"""
            {strategy}, {weights.PointsPerTravelHour} points an hour of driving: mean {points.Average():0}, P10 {Quantile.Of(points, 0.1):0}, P50 {Quantile.Of(points, 0.5):0}, P90 {Quantile.Of(points, 0.9):0} points, {played.Average(season => season.CrewDays):0} crew days, {played.Average(season => season.TravelHours):0} hours of driving
            """));
    }
}
