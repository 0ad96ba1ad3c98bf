using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Tests.Evaluation;
using static WorkWindows.Engine.Evaluation.DayState;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>docs/rules/seasons.md: common practice, no source.</summary>
public class SeasonTests
{
    private static readonly DaySpan Year = DaySpan.Between(new(2026, 1, 1), new(2026, 12, 31));

    private static readonly LocalDate LeafOut = new(2026, 5, 6);

    [Theory]
    [InlineData(1, 1, Closed)]
    [InlineData(1, 24, Closed)]
    [InlineData(1, 25, Open)]
    [InlineData(5, 5, Open)]      // the day before leaf-out
    [InlineData(5, 6, Closed)]
    [InlineData(7, 31, Closed)]
    [InlineData(8, 1, Open)]
    [InlineData(9, 30, Open)]
    [InlineData(10, 1, Closed)]
    [InlineData(12, 31, Closed)]
    public void State_FollowsTheSeasons_WhenLeafOutIsKnown(int month, int day, DayState expected) =>
        Assert.Equal(expected, Shipped.Over(Year, Task("hinge-cut"), LeafOut)[new(2026, month, day)]);

    [Theory]
    [InlineData(3, 14, Open)]
    [InlineData(3, 15, Unknown)]
    [InlineData(6, 14, Unknown)]
    [InlineData(6, 15, Closed)]
    public void State_IsUnknownWhileLeavesMayBeOut_WhenLeafOutIsNotKnown(int month, int day, DayState expected) =>
        Assert.Equal(expected, Shipped.Over(Year, Task("hinge-cut"))[new(2026, month, day)]);

    [Theory]
    [InlineData("hinge-cut", Closed)]
    [InlineData("re-cut", Closed)]
    [InlineData("overstory-felling", Closed)]
    [InlineData("trail-opening", Open)]
    [InlineData("cleanup", Open)]
    [InlineData("tie-down", Open)]
    [InlineData("timber-harvest", Open)]
    [InlineData("girdling", Open)]
    [InlineData("frill-herbicide", Open)]
    [InlineData("conifer-underplanting", Open)]
    [InlineData("prescribed-burn", Open)]
    public void State_IsClosedInJune_ForTheWorkThatNeedsDormancy(string practice, DayState expected) =>
        Assert.Equal(expected, Shipped.Over(Year, Task(practice), LeafOut)[new(2026, 6, 20)]);

    // Michigan State University Extension: late April to mid-May, northern Michigan
    [Theory]
    [InlineData("26055", 4, 20, "Fails")]
    [InlineData("26055", 4, 21, "Holds")]
    [InlineData("26055", 5, 15, "Holds")]
    [InlineData("26055", 5, 16, "Fails")]
    public void Planting_IsFavouredInSpring_InNorthernMichigan(string county, int month, int day, string expected)
    {
        var task = Task("conifer-underplanting") with { CountyFips = county };
        var said = Shipped.Says("mi.planting.spring-north", Shipped.Over(Year, task, LeafOut), new(2026, month, day));
        Assert.Equal(expected, said.ToString());
    }

    [Fact]
    public void Planting_IsNotFavoured_InSouthernMichigan() =>
        Assert.DoesNotContain(
            Shipped.Over(Year, Task("conifer-underplanting"), LeafOut).Rules,
            rule => rule.Rule.Id == "mi.planting.spring-north");

    private static TaskFacts Task(string practice) => Given.Task(practice, "MI", [SpeciesGroup.Maple]);
}
