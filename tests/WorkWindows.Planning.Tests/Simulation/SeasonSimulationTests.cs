using System.Collections.Immutable;
using Shouldly;
using WorkWindows.Planning.Simulation;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Simulation;

public sealed class SeasonSimulationTests(ITestOutputHelper output)
{
    private static readonly PlanLimits Short = new() { Workers = 1, Effort = 0.02, Seconds = 20 };

    /// <summary>Seasons 1994 to 2014 of the records, with the days that the shipped rules leave workable in them.</summary>
    [Fact]
    public void Play_BringsMoreByPlan_ThanByFirstComeOrEarliestDeadline_OverPastSeasons()
    {
        var past = new PastSeasonCase(1994, 2014);

        var played = past.Years.AsParallel().AsOrdered().Select(year => Enum.GetValues<Strategy>()
            .Select(strategy => SeasonSimulation.Play(past.Of(year), past.Truth(year), strategy, Short).Benefit).ToArray()).ToList();

        foreach (var (year, points) in past.Years.Zip(played))
            output.WriteLine($"{year}: {string.Join(", ", points.Select(one => $"{one:0}"))}");
        played.Count.ShouldBeGreaterThanOrEqualTo(20);
        played.Average(points => points[0]).ShouldBeGreaterThan(played.Average(points => points[1]));
        played.Average(points => points[0]).ShouldBeGreaterThan(played.Average(points => points[2]));
    }

    [Theory]
    [InlineData(Strategy.Planned)]
    [InlineData(Strategy.FirstCome)]
    [InlineData(Strategy.EarliestDeadline)]
    public void Play_NeverWorksOnADayThatIsClosedInTruth_AndCountsWhatIsDoneWhole(Strategy strategy)
    {
        var plan = Of([Task("a", 6, "wwww"), Task("b", 12, "wwww") with { After = ["a"] }], Crew("north"));

        var some = SeasonSimulation.Play(plan, Days("ww--", "ww--"), strategy, Short);
        var whole = SeasonSimulation.Play(plan, Days("ww-w", "-www"), strategy, Short);

        (some.Done, some.Benefit, some.CrewDays).ShouldBe((1, 60, 2));
        (whole.Done, whole.Benefit).ShouldBe((2, 180));
    }

    [Fact]
    public void Play_TakesTheEarliestDeadlineFirst_WhereAskedTo()
    {
        var plan = Of([Task("a", 7, "ww") with { Benefit = 1 }, Task("b", 7, "ww") with { Deadline = Monday }], Crew("north"));

        SeasonSimulation.Play(plan, Days("w-", "w-"), Strategy.FirstCome, Short).Benefit.ShouldBe(1);
        SeasonSimulation.Play(plan, Days("w-", "w-"), Strategy.EarliestDeadline, Short).Benefit.ShouldBe(70);
        SeasonSimulation.Play(plan, Days("w-", "w-"), Strategy.Planned, Short).Benefit.ShouldBe(70);
    }

    [Theory]
    [InlineData(0.8, 4)]
    [InlineData(1, 2)]
    [InlineData(0.2, 10)]
    public void AtLeastIn_TellsWhatIsReachedInAShareOfTheYears(double share, int days) =>
        CrewDays.AtLeastIn([10, 2, 4, 6, 8], share).ShouldBe(days);

    [Fact]
    public void CrewDays_CountDaysOnWhichAnythingCanBeWorked_ForEachCrewThatWorks() =>
        CrewDays.Of([Days("w--w", "-w-w"), Days("----", "----")], [1, 1, 1, 2]).ShouldBe([4, 0]);

    private static ImmutableArray<ImmutableArray<bool>> Days(params string[] tasks) =>
        [.. tasks.Select(task => task.Select(day => day == 'w').ToImmutableArray())];
}
