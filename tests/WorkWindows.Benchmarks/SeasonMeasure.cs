using System.Globalization;
using WorkWindows.Engine.Climatology;
using WorkWindows.Planning;
using WorkWindows.Planning.Simulation;
using WorkWindows.Planning.Tests.Simulation;

namespace WorkWindows.Benchmarks;

/// <summary>What past seasons bring by plan, and by the two usual ways to choose work.</summary>
internal static class SeasonMeasure
{
    public static void Run(int firstYear, int lastYear)
    {
        var past = new PastSeasonCase(firstYear, lastYear);
        var limits = new PlanLimits { Workers = 1, Effort = 0.1, Seconds = 60 };
        var played = past.Years.AsParallel().AsOrdered().Select(year => Enum.GetValues<Strategy>()
            .Select(strategy => SeasonSimulation.Play(past.Of(year), past.Truth(year), strategy, limits)).ToArray()).ToList();
        Console.WriteLine($"{past.Years.Length} seasons, {firstYear} to {lastYear}");
        foreach (var strategy in Enum.GetValues<Strategy>())
        {
            var points = played.ConvertAll(season => season[(int)strategy].Benefit);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"""
                {strategy}: mean {points.Average():0}, P10 {Quantile.Of(points, 0.1):0}, P50 {Quantile.Of(points, 0.5):0}, P90 {Quantile.Of(points, 0.9):0} points, {played.Average(season => season[(int)strategy].CrewDays):0} crew days
                """));
        }
    }
}
