using Shouldly;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Tests.Crews;

public sealed class TravelTimesTests
{
    private static readonly PlanPlace[] Places =
        [new("a", 43, -84), new("b", 43, -85), new("c", 43, -86)];

    /// <summary>
    /// Airports of Nashville and Los Angeles, 2886.44 km on a sphere of 6371 km (36.12 N 86.67 W, 33.94 N 118.40 W; a
    /// widely used check value of the haversine formula, from memory); the mean radius adds 4 m.
    /// </summary>
    [Fact]
    public void Minutes_FollowTheGreatCircle() =>
        TravelTimes.Of([new("bna", 36.12, -86.67), new("lax", 33.94, -118.40)], [], 1, 60).Minutes("bna", "lax")
            .ShouldBe(2886.45, 0.05);

    [Fact]
    public void Minutes_AreThoseOfAKnownDrive_EachWayByItself()
    {
        var times = TravelTimes.Of(Places, [new("a", "b", 70), new("elsewhere", "b", 1)], 1.3, 60);

        times.Minutes("a", "b").ShouldBe(70);
        times.Minutes("b", "a").ShouldBe(81.42 * 1.3, 0.3);
    }

    [Fact]
    public void Minutes_AreNeverMoreThanByWayOfAThirdPlace() =>
        TravelTimes.Of(Places, [new("a", "b", 10), new("b", "c", 12), new("a", "c", 50)], 1.3, 60).Minutes("a", "c").ShouldBe(22);

    [Fact]
    public void Minutes_OfAMeasuredDrive_AreNeverLessBecauseOfAnEstimate()
    {
        // Across a river: the third place lies right beside the first.
        var times = TravelTimes.Of([new("a", 43, -84), new("b", 43, -84.001), new("c", 43.01, -84)], [new("a", "c", 50)], 1.3, 60);

        times.Minutes("a", "c").ShouldBe(50);
        times.Minutes("c", "a").ShouldBeLessThan(3);
    }

    [Theory]
    [InlineData(0.9, 60, "road factor is 0.9")]
    [InlineData(1.3, 0, "speed is 0 km/h")]
    public void Of_NamesWhatIsWrong(double factor, double speed, string says) =>
        Should.Throw<PlanCaseException>(() => TravelTimes.Of(Places, [], factor, speed)).Message.ShouldContain(says);
}
