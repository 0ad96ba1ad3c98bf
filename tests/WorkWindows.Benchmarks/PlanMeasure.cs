using System.Diagnostics;
using System.Globalization;
using WorkWindows.Planning;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;

namespace WorkWindows.Benchmarks;

/// <summary>How good a plan of a large season is after a while, and what it takes.</summary>
internal static class PlanMeasure
{
    private const double BytesPerMegabyte = 1024 * 1024;

    public static void Run(int tasks, int crews, int days, double seconds)
    {
        var plan = GeneratedSeason.Of(tasks, crews, days);
        var watch = Stopwatch.StartNew();
        var made = CrewPlanner.Plan(plan, new() { Seconds = seconds, Effort = double.MaxValue });
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"""
            {tasks} tasks, {crews} crews, {days} days: {watch.Elapsed.TotalSeconds:0.0} s, {process.PeakWorkingSet64 / BytesPerMegabyte:0} MB
            objective {made.Objective:0.0}, bound {made.Bound:0.0}, gap {made.Gap:P1}, optimal: {made.IsOptimal}
            {made.Bookings.Length} bookings, {made.LeftOut.Length} tasks left out, {made.TravelMinutes / 60:0} h of driving
            hard rules broken: {PlanCheck.Broken(plan, made.Bookings).Length}
            """));
    }
}
