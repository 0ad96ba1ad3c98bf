using CsCheck;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

public class TaskEvaluationTests
{
    private const double Gap = double.NaN;

    private static readonly string Cold = Given.Rule(
        "closes", "signal: min-temperature, below: 20 degF, days-in-a-row: 3");

    // 20 °F is -6.667 °C; -7 is below it, -6 above.
    [Theory]
    [InlineData("0 -6 -6 -6 -6", "OOOOO")]
    [InlineData("0 -7 -7 -7 -6", "OOOCO")]
    [InlineData("0 -7 -6 -7 -7", "OOOOO")]
    [InlineData("0 -7 gap -7 -7", "OOOUU")]    // from the fourth night on the gap may have been a cold one
    [InlineData("-7 -7 -7 -7 -6", "UUCCO")]    // nothing is known of the nights before the record
    public void State_IsClosed_OnTheThirdColdNight(string minimaC, string states) =>
        Assert.Equal(states, Given.States(
            [Given.Pack(Cold)],
            Nights([.. minimaC.Split(' ').Select(night => night == "gap" ? Gap : int.Parse(night))]),
            Given.HingeCut));

    [Fact]
    public void State_IsUnknownNeverOpen_WhenAClosingRuleLacksItsInput() =>
        Assert.Equal(
            "OOUUUOO", Given.States([Given.Pack(Given.Rule("closes", "signal: min-temperature, below: 20 degF"))],
            Nights(0, 0, Gap, Gap, Gap, 0, 0), Given.HingeCut));

    [Fact]
    public void State_IsUnknown_WhenNothingReportsTheSignal() =>
        Assert.Equal("UU", Given.States([Given.Pack(Given.Rule("closes", "signal: gust, at-least: 25 mph"))],
            Nights(0, 0), Given.HingeCut));

    [Fact]
    public void State_IsLimited_WhenALimitingRuleLacksItsInput() =>
        Assert.Equal("OL", Given.States([Given.Pack(Given.Rule("limits", "signal: min-temperature, below: 20 degF"))],
            Nights(0, Gap), Given.HingeCut));

    [Fact]
    public void State_FollowsThePrecedence_ClosedUnknownLimitedOpen()
    {
        var pack = Given.Pack(
            Given.Rule("limits", "signal: max-temperature, at-least: 0 degC"),
            Given.Rule("closes", "signal: min-temperature, below: -10 degC"),
            Given.Rule("closes", "signal: gust, at-least: 25 mph"));
        var signals = Given.Signals(
            (SignalKind.MaxTemperatureC, [-1, 1, 1, 1]),
            (SignalKind.MinTemperatureC, [0, 0, 0, -11]),
            (SignalKind.GustMps, [0, 0, Gap, Gap]));

        Assert.Equal("OLUC", Given.States([pack], signals, Given.HingeCut));
    }

    [Fact]
    public void State_IsNotTouched_ByFavoursAndRequires() =>
        Assert.Equal("OO", Given.States(
            [Given.Pack(Given.Rule("favours", "signal: min-temperature, above: 0 degC"), Given.Rule(
                "requires", "signal: min-temperature, above: 0 degC"))],
            Nights(5, Gap), Given.HingeCut));

    [Theory]
    [InlineData("hinge-cut", new[] { SpeciesGroup.RedOak }, "C")]
    [InlineData("hinge-cut", new[] { SpeciesGroup.Maple }, "O")]
    [InlineData("hinge-cut", null, "U")]       // no inventory: there may be oaks
    [InlineData("tie-down", null, "O")]        // wounds nothing
    public void State_DependsOnTheStand_WhenTheRuleAsksForSpecies(
        string practice, SpeciesGroup[]? species, string expected)
    {
        var pack = Given.Pack(Given.Rule(
            "closes", "signal: min-temperature, above: 0 degC", "traits: [wounds-trees], species: [red-oak, white-oak]"));

        Assert.Equal(expected, Given.States([pack], Nights(5), Given.Task(practice, species: species)));
    }

    [Theory]
    [InlineData("states: [WI]", "O")]
    [InlineData("states: [MI]", "C")]
    [InlineData("counties: [\"26063\"]", "O")]
    [InlineData("counties: [\"26065\"]", "C")]
    [InlineData("flags: [wet-ground]", "O")]
    [InlineData("flags: [quiet-on-deer-openers]", "C")]
    [InlineData("practices: [tie-down]", "O")]
    [InlineData("practices: [tie-down, hinge-cut]", "C")]
    [InlineData("practices: [hinge-cut], states: [WI]", "O")]   // every named part must match
    public void State_IsLeftAlone_OutsideTheScope(string scope, string expected) =>
        Assert.Equal(expected, Given.States(
            [Given.Pack(Given.Rule("closes", "signal: min-temperature, above: 0 degC", scope))],
            Nights(5), Given.Task("hinge-cut", flags: SiteFlag.QuietOnDeerOpeners)));

    // The reading of 20 °F stands in the record as -6.7 °C and is restored to -6.667 before rules see it
    // (GHCN-Daily readme: tenths of °C; US cooperative stations read whole °F).
    [Theory]
    [InlineData("below: 20 degF", "OC")]
    [InlineData("at-most: 20 degF", "CC")]
    [InlineData("at-least: 20 degF", "CO")]
    [InlineData("above: 20 degF", "OO")]
    public void Threshold_CountsAnEqualReadingAsEqual(string relation, string expected) =>
        Assert.Equal(expected, Given.States([Given.Pack(Given.Rule("closes", $"signal: min-temperature, {relation}"))],
            Nights((20 - 32) / 1.8, (19 - 32) / 1.8), Given.HingeCut));

    [Fact]
    public void AddingAClosingRule_NeverOpensADay()
    {
        string[] relations = ["below", "at-most", "at-least", "above"];
        var condition = Gen.Select(Gen.Int[0, 3].Select(index => relations[index]), Gen.Int[-20, 20], Gen.Int[1, 4], (relation, limitC, days) =>
            $"signal: min-temperature, {relation}: {limitC} degC" + (days > 1 ? $", days-in-a-row: {days}" : ""));
        var rules = Gen.Select(Gen.Bool.Select(closes => closes ? "closes" : "limits"), condition, (effect, when) => Given.Rule(effect, when));
        var nights = Gen.OneOf(Gen.Double[-25, 25], Gen.Const(Gap)).Array[1, 100];

        Gen.Select(rules.Array[1, 4], condition, nights).Sample((others, when, minimaC) =>
        {
            var before = Given.States([Given.Pack(others)], Nights(minimaC), Given.HingeCut);
            var after = Given.States(
                [Given.Pack([.. others, Given.Rule("closes", when)])], Nights(minimaC), Given.HingeCut);

            for (var day = 0; day < before.Length; day++)
                Assert.True(Precedence(after[day]) >= Precedence(before[day]), $"{before} became {after}");
        });

        static int Precedence(char state) => "OLUC".IndexOf(state, StringComparison.Ordinal);
    }

    private static SignalSet Nights(params double[] minimaC) => Given.Signals((SignalKind.MinTemperatureC, minimaC));
}
