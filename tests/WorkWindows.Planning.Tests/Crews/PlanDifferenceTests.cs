using System.Globalization;
using NodaTime;
using Shouldly;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Differences;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Crews;

public sealed class PlanDifferenceTests
{
    [Theory]
    [InlineData("north@1", "north@1", null, 0)]
    [InlineData("", "north@1", PlanChange.Added, 0)]
    [InlineData("north@1", "", PlanChange.Dropped, 0)]
    [InlineData("north@1", "north@3", PlanChange.Moved, 2)]
    [InlineData("north@3 north@4", "north@1 north@4", PlanChange.Moved, -2)]
    [InlineData("north@1", "south@1", PlanChange.OtherCrew, 0)]
    [InlineData("north@1", "south@2", PlanChange.MovedToOtherCrew, 1)]
    [InlineData("north@1", "north@1:6", PlanChange.Rearranged, 0)]
    [InlineData("north@1:4", "north@1:4.01", null, 0)]
    [InlineData("north@1 south@2", "south@1 north@2", PlanChange.Rearranged, 0)]
    public void Between_TellsWhatBecameOfATask(string before, string after, PlanChange? change, int daysLater)
    {
        var found = PlanDifference.Between(Bookings(before), Bookings(after));

        found.Select(one => (PlanChange?)one.Change).ShouldBe(change is null ? [] : [change]);
        found.Sum(one => one.DaysLater).ShouldBe(daysLater);
    }

    private static Booking[] Bookings(string text) =>
    [
        .. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Split('@'))
            .Select(parts => (Crew: parts[0], Day: parts[1].Split(':')))
            .Select(one => new Booking(
                "a", one.Crew, Monday.PlusDays(int.Parse(one.Day[0])),
                one.Day.Length > 1 ? double.Parse(one.Day[1], CultureInfo.InvariantCulture) : 4)),
    ];
}
