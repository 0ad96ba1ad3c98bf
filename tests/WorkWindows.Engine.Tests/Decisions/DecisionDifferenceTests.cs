using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Decisions;

public class DecisionDifferenceTests
{
    private const double Gap = double.NaN;

    private static readonly RulePack Pack = Given.Pack(
        Given.Rule("closes", "signal: gust, at-least: 25 mph"),
        Given.Rule(
            "closes", "calendar: { from: { event: leaf-out, not-before: 01-01, not-after: 01-09 }, to: 07-31 }"));

    // 25 mph is 11.176 m/s.
    [Fact]
    public void Between_NamesTheReadingThatMadeADayAnother() => Assert.Equal(
        [
            "2 Jan 2026: was open, now closed",
            "gusts on 2 Jan 2026: was 22.4 mph (observed), now 26.8 mph (observed)",
            "Rule 0: now holds (2 Jan 2026)",
        ],
        Said(Evaluate(Pack, 10, 10, 10), Evaluate(Pack, 10, 12, 10)));

    [Fact]
    public void Between_NamesAReadingThatCameToBeKnown() => Assert.Equal(
        [
            "1 Jan 2026 to 3 Jan 2026: was unknown, now open",
            "gusts on 1 Jan 2026: was not known, now 22.4 mph (observed)",
            "Rule 0: no longer holds (1 Jan 2026)",
        ],
        Said(Evaluate(Pack, Gap, Gap, Gap), Evaluate(Pack, 10, 10, 10)));

    [Fact]
    public void Between_NamesAnEventThatMoved() => Assert.Equal(
        [
            "2 Jan 2026: was open, now closed",
            "leaf-out 2026: was 3 Jan 2026 (predicted from observed temperatures), now 2 Jan 2026 (seen on the property)",
            "Rule 1: now holds (2 Jan 2026)",
        ],
        Said(Evaluate(Pack, LeafOut(3, Basis.Observed), 10, 10, 10),
            Evaluate(Pack, LeafOut(2, Basis.SiteObservation), 10, 10, 10)));

    [Fact]
    public void Between_NamesAChangedPack_AndAnException()
    {
        var stricter = Given.Pack(Given.Rule("closes", "signal: gust, at-least: 20 mph"));
        var facts = Given.HingeCut with
        {
            Overrides = [new("r1", Given.First, Given.First.PlusDays(9), "Ada Birch", "Looked at.")],
        };

        var said = Said(Evaluate(Pack, 10), new PointRules([stricter], Gusts(null, 10)).Evaluate(facts));

        Assert.Equal(
            [
                "1 Jan 2026: was open, now closed",
                "The rule pack Test changed from 1 to 1.",
                "There is a new exception: r1, by Ada Birch, until 10 Jan 2026.",
                "Rule 0: now holds (1 Jan 2026)",
            ],
            said);
    }

    // An update may ship a rule with an id that an organization's pack already has.
    [Fact]
    public void Between_TakesRulesOfOneIdTogether()
    {
        var before = new PointRules([Pack, Pack with { Id = "other" }], Gusts(null, 10)).Evaluate(Given.HingeCut);
        var now = new PointRules([Pack, Pack with { Id = "other" }], Gusts(null, 12)).Evaluate(Given.HingeCut);
        var record = DecisionRecord.Of(before, before.Span, DecisionRecord.HashOf(Snapshot.Write(before.Signals)));

        var difference = DecisionDifference.Between(record.Content.ToArray(), before.Signals, now, now.Span);

        Assert.Equal("r0", Assert.Single(difference.Rules).RuleId);
    }

    [Fact]
    public void Between_NamesTheRuleOfAnExceptionThatIsGone_ByItsTitleWhereItIsKnown()
    {
        var excepted = new PointRules([Pack], Gusts(null, 12)).Evaluate(Given.HingeCut with
        {
            Overrides =
            [
                new("r0", Given.First, Given.First.PlusDays(9), "Ada Birch", "Looked at."),
                new("gone.rule", Given.First, Given.First.PlusDays(9), "Ada Birch", "Looked at."),
            ],
        });

        var said = Said(excepted, Evaluate(Pack, 12));

        Assert.Contains("An exception is gone: Rule 0, by Ada Birch, until 10 Jan 2026.", said);
        Assert.Contains("An exception is gone: gone.rule, by Ada Birch, until 10 Jan 2026.", said);
    }

    [Fact]
    public void Between_ComparesTheDaysAskedFor()
    {
        var (before, now) = (Evaluate(Pack, 10, 12, 10), Evaluate(Pack, 12, 10, 10));
        var record = DecisionRecord.Of(before, before.Span, DecisionRecord.HashOf(Snapshot.Write(before.Signals)));

        var difference = DecisionDifference.Between(
            record.Content.ToArray(), before.Signals, now, new(Given.First.PlusDays(1), 9));

        Assert.Equal(["2 Jan 2026: was closed, now open"], difference.Days.Select(Wording.Of));
    }

    [Fact]
    public void Between_IsEmpty_WhenNothingChanged() =>
        Assert.Empty(Said(Evaluate(Pack, 10, 12, Gap), Evaluate(Pack, 10, 12, Gap)));

    private static string[] Said(TaskEvaluation before, TaskEvaluation now)
    {
        var record = DecisionRecord.Of(before, before.Span, DecisionRecord.HashOf(Snapshot.Write(before.Signals)));
        var difference = DecisionDifference.Between(record.Content.ToArray(), before.Signals, now, now.Span);
        var titles = now.Packs.SelectMany(pack => pack.Rules).ToDictionary(rule => rule.Id, rule => rule.Title);
        return [.. difference.Days.Select(Wording.Of), .. Wording.Causes(
            difference, id => titles.GetValueOrDefault(id, id))];
    }

    private static SeasonEvent LeafOut(int day, Basis basis) => new(SeasonEventKind.LeafOut, new(2026, 1, day), basis);

    private static TaskEvaluation Evaluate(RulePack pack, params double[] gustsMps) =>
        Evaluate(pack, LeafOut(9, Basis.Observed), gustsMps);

    private static TaskEvaluation Evaluate(RulePack pack, SeasonEvent leafOut, params double[] gustsMps) =>
        new PointRules([pack], Gusts(leafOut, gustsMps)).Evaluate(Given.HingeCut);

    private static SignalSet Gusts(SeasonEvent? leafOut, params double[] gustsMps)
    {
        var signals = Given.Signals((SignalKind.GustMps, gustsMps));
        return leafOut is null ? signals : signals.With([leafOut]);
    }
}
