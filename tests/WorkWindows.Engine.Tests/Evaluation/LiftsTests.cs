using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

/// <summary>Lower packs and named persons take away what guidelines say, and never regulation or life safety.</summary>
public class LiftsTests
{
    private static readonly SignalSet FourDays = Given.Signals((SignalKind.GustMps, [0, 0, 0, 0]));

    [Theory]
    [InlineData("agency-guideline", "", "CCOO")]
    [InlineData("published-study", "", "CCOO")]
    [InlineData("common-practice", "", "CCOO")]
    [InlineData("regulation", "", "CCCC")]
    [InlineData("common-practice", "life-safety: true", "CCCC")]
    public void LowerPack_LiftsOnItsOwnDays(string authority, string lifeSafety, string states) =>
        Assert.Equal(
            states, Given.States(Stack(authority, lifeSafety, "calendar: { from: 01-03, to: 12-31 }"), FourDays,
            Given.HingeCut));

    [Fact]
    public void LowerPack_LeavesTheRule_WhereItCannotBeKnownWhetherItLifts() => Assert.Equal(
        "CCCC",
        Given.States(Stack("common-practice", "", "signal: min-temperature, above: 0 degC"), FourDays, Given.HingeCut));

    [Theory]
    [InlineData("agency-guideline", "", "CLLC")]   // never better than limited
    [InlineData("regulation", "", "CCCC")]
    [InlineData("common-practice", "life-safety: true", "CCCC")]
    public void Override_LimitsTheDaysUntilItExpires(string authority, string lifeSafety, string states) =>
        Assert.Equal(states, Given.States([Upper(authority, lifeSafety)], FourDays, Excepted));

    [Fact]
    public void Override_OfALimit_LeavesItsDaysLimited_WithoutTheMeasure()
    {
        var limit = RulePackReader.Read(
            """
            pack: upper
            version: "1"
            title: Upper
            level: national
            rules:
              - id: upper
                title: Care
                effect: limits
                scope: { practices: [hinge-cut] }
                when: { calendar: { from: 01-01, to: 12-31 } }
                because: It is so.
                measure: Go slowly.
                authority: common-practice
                source: { title: Test }
            """);

        Assert.Equal("LLLL", Given.States([limit], FourDays, Excepted));
        var verdict = Assert.Single(
            Explanation.Of(new PointRules([limit], FourDays).Evaluate(Excepted), Given.First.PlusDays(1)).Deciding);
        Assert.False(verdict.Spoke);
        Assert.Equal(
            "Exception to 'Care' by Ada Birch until 3 Jan 2026: The stand was looked at.", Wording.Lifted(verdict));
    }

    [Fact]
    public void Override_ChangesNothing_OnDaysThatTheRuleDoesNotClose() => Assert.Equal(
        "OOOO",
        Given.States([Upper("common-practice", "", "calendar: { on: 06-01 }")], FourDays, Excepted));

    [Fact]
    public void Explanation_NamesWhoMadeTheExceptionWhyAndUntilWhen()
    {
        var evaluation = new PointRules([Upper("common-practice", "")], FourDays).Evaluate(Excepted);

        var verdict = Assert.Single(Explanation.Of(evaluation, Given.First.PlusDays(1)).Deciding);

        Assert.Equal(new Lifting("Ada Birch", "The stand was looked at.", Given.First.PlusDays(2)), verdict.Lifting);
        Assert.False(verdict.Spoke);
    }

    [Fact]
    public void Explanation_NamesTheRuleThatLifts()
    {
        var evaluation = new PointRules(
            Stack("common-practice", "", "calendar: { from: 01-03, to: 12-31 }"), FourDays).Evaluate(Given.HingeCut);

        var verdict = Explanation.Of(evaluation, Given.First.PlusDays(3)).Verdicts[0];

        Assert.Equal(("Agreed", "It was agreed."), (verdict.Lifting!.By, verdict.Lifting.Reason));
    }

    [Fact]
    public void Explanation_SaysWhenEachRuleLetsGo()
    {
        var evaluation = new PointRules(
            [Given.Pack(Given.Rule("closes", "calendar: { from: 12-01, to: 01-02 }"),
                Given.Rule("closes", "signal: gust, at-most: 1 mph"))],
            Given.Signals((SignalKind.GustMps, [0, 0, double.NaN, 9]))).Evaluate(Given.HingeCut);

        Assert.Equal(
            [Given.First.PlusDays(2), Given.First.PlusDays(3)],
            Explanation.Of(evaluation, Given.First).Deciding.Select(verdict => verdict.LetsGoOn));
    }

    private static TaskFacts Excepted => Given.HingeCut with
    {
        Overrides = [new(
            "upper", Given.First.PlusDays(1), Given.First.PlusDays(2), "Ada Birch", "The stand was looked at.")],
    };

    private static System.Collections.Immutable.ImmutableArray<RulePack> Stack(
        string authority, string lifeSafety, string when) =>
        [
            Upper(authority, lifeSafety),
            RulePackReader.Read($$"""
                pack: lower
                version: "1"
                title: Lower
                level: organization
                rules:
                  - id: lower
                    title: Agreed
                    effect: lifts
                    lifts: upper
                    scope: { traits: [chain-saw] }
                    when: { {{when}} }
                    because: It was agreed.
                    authority: common-practice
                    source: { title: test }
                """),
        ];

    private static RulePack Upper(
        string authority, string lifeSafety, string when = "calendar: { from: 01-01, to: 12-31 }") =>
        RulePackReader.Read($$"""
            pack: upper
            version: "1"
            title: Upper
            rules:
              - id: upper
                title: Upper
                effect: closes
                scope: { traits: [chain-saw] }
                when: { {{when}} }
                because: It is so.
                authority: {{authority}}
                {{(lifeSafety.Length == 0 ? "life-safety: false" : lifeSafety)}}
                source: { title: test }
            """);
}
