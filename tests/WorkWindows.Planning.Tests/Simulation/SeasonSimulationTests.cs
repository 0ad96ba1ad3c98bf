using System.Collections.Immutable;
using Shouldly;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Simulation;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Simulation;

public sealed class SeasonSimulationTests(ITestOutputHelper output)
{
    private static readonly PlanLimits Short = new() { Workers = 1, Effort = 0.02, Seconds = 20 };

    /// <summary>
    /// Seasons 1994 to 2014 of the records, with the days that the shipped rules leave workable in them. Owners ask in another
    /// order each year, and without a plan a crew goes to what is near it first.
    /// </summary>
    [Fact]
    public void Play_BringsAsMuchByPlan_ForFarLessDriving_OverPastSeasons()
    {
        var past = new PastSeasonCase(1994, 2014);

        var played = past.Years.AsParallel().AsOrdered().Select(year => Enum.GetValues<Strategy>()
            .Select(strategy => SeasonSimulation.Play(past.Of(year), past.Truth(year), strategy, Short)).ToArray()).ToList();

        foreach (var (year, results) in past.Years.Zip(played))
            output.WriteLine($"{year}: {string.Join(", ", results.Select(one => $"{one.Benefit:0} less {one.TravelHours:0} h"))}");
        played.Count.ShouldBeGreaterThanOrEqualTo(20);
        foreach (var other in new[] { 1, 2 })
        {
            played.Average(results => results[0].Benefit).ShouldBeGreaterThan(0.95 * played.Average(results => results[other].Benefit));
            played.Average(results => Net(results[0])).ShouldBeGreaterThan(1.1 * played.Average(results => Net(results[other])));
            // Nobody knows a season beforehand, so that luck decides some.
            played.Count(results => Net(results[0]) > Net(results[other])).ShouldBeGreaterThan(played.Count * 3 / 4);
        }

        static double Net(SeasonResult season) => season.Benefit - season.TravelHours * new PlanWeights().PointsPerTravelHour;
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
