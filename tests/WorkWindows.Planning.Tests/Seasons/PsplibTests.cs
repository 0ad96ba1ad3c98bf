using Shouldly;
using WorkWindows.Planning.Seasons;

namespace WorkWindows.Planning.Tests.Seasons;

public sealed class PsplibTests(ITestOutputHelper output)
{
    /// <summary>Makespans proven optimal, as PSPLIB lists them for j301_1 to j301_10.</summary>
    [Fact]
    public void Solve_FindsThePublishedOptimum_OfAtLeastEightOfTenProjects()
    {
        var optima = PsplibProject.Optima();

        var found = optima.ToDictionary(one => one.Key, one => SeasonModel.Solve(
            PsplibProject.Read(one.Key), SeasonAim.EarliestEnd, new() { Seconds = 30, Effort = 30 })!);

        foreach (var (name, solution) in found)
            output.WriteLine($"{name}: {solution.Objective} of {optima[name]}, bound {solution.Bound}");
        optima.Count.ShouldBe(10);
        found.ShouldAllBe(one => one.Value.Objective >= optima[one.Key] && one.Value.Bound <= optima[one.Key]);
        found.Count(one => one.Value.Objective == optima[one.Key]).ShouldBeGreaterThanOrEqualTo(8);
    }
}
