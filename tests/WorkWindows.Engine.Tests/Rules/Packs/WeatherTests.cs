using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;
using static WorkWindows.Engine.Tests.Rules.Packs.Shipped;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>docs/rules/hinge-and-cold.md, wind.md: common practice and house rules, not published.</summary>
public class WeatherTests
{
    private static readonly LocalDate First = new(2026, 2, 1);

    [Theory]
    [InlineData("hinge-cut", "20 20 20 20", "OOOO")]
    [InlineData("hinge-cut", "19 20 20 20", "LOOO")]        // one cold night: try the first stem
    [InlineData("hinge-cut", "19 19 19 19", "LLCC")]
    [InlineData("hinge-cut", "19 19 25 19", "LLOL")]
    [InlineData("re-cut", "19 19 19 20", "LLCO")]
    [InlineData("overstory-felling", "19 19 19 19", "OOOO")]    // felled whole: no hinge has to bend
    public void State_FollowsTheCold(string practice, string minimaDegF, string states) =>
        Assert.Equal(states, FebruaryStates(
            Task(practice), SignalKind.MinTemperatureC, [.. minimaDegF.Split(' ').Select(f => DegC(int.Parse(f)))]));

    [Theory]
    [InlineData(32, 20, Truth.Fails)]
    [InlineData(33, 20, Truth.Holds)]
    [InlineData(33, 19, Truth.Fails)]
    public void Thaw_FavoursHingeCutting(double maxDegF, double minDegF, Truth expected)
    {
        var evaluation = Evaluate(new(First, 1), Task("hinge-cut"), new()
        {
            [SignalKind.MaxTemperatureC] = [DegC(maxDegF)],
            [SignalKind.MinTemperatureC] = [DegC(minDegF)],
        }, null);

        Assert.Equal(expected, Says("hinge.thaw", evaluation, First));
    }

    // Beaufort edges (US National Weather Service): 13 = force 4, 19 = force 5, 25 = force 6, 32 = force 7
    [Theory]
    [InlineData("hinge-cut", SignalKind.WindMps, "12 13 18 19", "OLLC")]
    [InlineData("hinge-cut", SignalKind.GustMps, "24 25 31 32", "OCCC")]
    [InlineData("cleanup", SignalKind.WindMps, "12 13 18 19", "OOOO")]      // a saw, but nothing is felled
    [InlineData("cleanup", SignalKind.GustMps, "24 25 31 32", "OOOC")]
    [InlineData("tie-down", SignalKind.GustMps, "24 25 31 32", "OOOC")]     // limbs fall on people without saws, too
    [InlineData("conifer-underplanting", SignalKind.GustMps, "24 25 31 32", "OOOC")]
    [InlineData("prescribed-burn", SignalKind.WindMps, "14 15 16 19", "OOCC")]  // extension.org: 2 to 15 mph
    [InlineData("prescribed-burn", SignalKind.GustMps, "23 24 25 32", "OOCC")]  // common practice, no source
    public void State_FollowsTheWind(string practice, SignalKind kind, string mph, string states) =>
        Assert.Equal(states, FebruaryStates(
            Task(practice), kind, [.. mph.Split(' ').Select(speed => Mps(int.Parse(speed)))]));

    [Theory]
    [InlineData("cleanup", SignalKind.DarkShiftMinutes, "OL", 0.0, 1.0)]
    [InlineData("cleanup", SignalKind.LightShiftMinutes, "CO", 59.0, 60.0)]
    [InlineData("tie-down", SignalKind.DarkShiftMinutes, "OO", 0.0, 60.0)]
    public void State_FollowsTheDaylight(string practice, SignalKind kind, string states, params double[] minutes) =>
        Assert.Equal(states, FebruaryStates(Task(practice), kind, minutes));

    [Theory]
    [InlineData(SignalKind.WindMps, "U")]
    [InlineData(SignalKind.GustMps, "U")]
    [InlineData(SignalKind.LightShiftMinutes, "U")]
    [InlineData(SignalKind.DarkShiftMinutes, "L")]
    [InlineData(SignalKind.MinTemperatureC, "LLU")]    // two mild nights before: a third gap could complete a cold run
    public void State_IsNeverOpen_WhenAReadingIsMissing(SignalKind kind, string states) =>
        Assert.Equal(states, FebruaryStates(
            Task("hinge-cut"), kind, [.. Enumerable.Repeat(double.NaN, states.Length)]));

    [Theory]
    [InlineData(SignalKind.PrecipitationMm, "L")]
    [InlineData(SignalKind.RedFlagAlert, "L")]
    [InlineData(SignalKind.WindAlert, "U")]
    [InlineData(SignalKind.WinterStormAlert, "U")]
    [InlineData(SignalKind.ThunderstormAlert, "U")]
    public void State_IsNeverOpen_WhenNobodyKnowsOfRainOrAlerts(SignalKind kind, string state) =>
        Assert.Equal(state, FebruaryStates(Task("hinge-cut"), kind, double.NaN));

    // Thunder, heat, snow and frost have no values on mild days in the first place.
    [Theory]
    [InlineData(SignalKind.WindChillC)]
    [InlineData(SignalKind.MinHumidityPercent)]
    [InlineData(SignalKind.FrozenGroundIndexC)]
    public void State_IsOpen_WhenAReadingThatCannotMatterIsMissing(SignalKind kind) =>
        Assert.Equal("O", FebruaryStates(Task("hinge-cut"), kind, double.NaN));

    private static TaskFacts Task(string practice) => Given.Task(practice, "MI", [SpeciesGroup.Maple]);
}
