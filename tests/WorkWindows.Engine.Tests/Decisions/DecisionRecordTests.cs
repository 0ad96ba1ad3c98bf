using System.Text;
using CsCheck;
using NodaTime;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Decisions;

public class DecisionRecordTests
{
    private static readonly RulePack Pack = Given.Pack(
        Given.Rule("closes", "signal: min-temperature, below: 20 degF, days-in-a-row: 3"),
        Given.Rule("limits", "signal: gust, at-least: 15 mph"),
        Given.Rule("closes", "signal: gust, at-least: 25 mph", "traits: [wounds-trees], species: [red-oak]"));

    [Fact]
    public void Content_StatesTheInputsTheDaysAndTheRules()
    {
        var signals = Given.Signals((SignalKind.MinTemperatureC, [0, -8, -8, -8]), (SignalKind.GustMps, [0, 12, 0, 0]));

        var decision = Decide(signals, Given.HingeCut);

        Assert.Equal("OUOC", decision.States);
        Assert.Equal(
            $$"""
            {"engine":"1","task":{"id":"T-1","practice":"hinge-cut","state":"MI","county":"26065","flags":[]},
            "packs":[{"id":"test","version":"1","hash":"{{Pack.Hash}}"}],"snapshot":"{{decision.SnapshotHash}}",
            "first":"2026-01-01","states":"OUOC","rules":[
            {"pack":"test","id":"r0","effect":"Closes","holds":["2026-01-04/2026-01-04"],"unknown":[]},
            {"pack":"test","id":"r1","effect":"Limits","holds":["2026-01-02/2026-01-02"],"unknown":[]},
            {"pack":"test","id":"r2","effect":"Closes","holds":[],"unknown":["2026-01-02/2026-01-02"]}]}
            """.ReplaceLineEndings(""),
            Encoding.UTF8.GetString(decision.Content.AsSpan()));
    }

    [Fact]
    public void Replay_GivesTheSameBytes()
    {
        var number = Gen.OneOf(Gen.Double[-40, 40], Gen.Const(double.NaN));
        var inputs = Gen.Int[1, 120].SelectMany(days => Gen.Select(number.Array[days], number.Array[days]));
        var tasks = Gen.Bool.Select(known => Given.Task(
            "hinge-cut", species: known ? [SpeciesGroup.RedOak, SpeciesGroup.Maple] : null, flags: SiteFlag.WetGround));

        Gen.Select(inputs, tasks).Sample((values, facts) =>
        {
            var signals = Given.Signals((SignalKind.MinTemperatureC, values.Item1), (SignalKind.GustMps, values.Item2))
                with
            {
                Events = [new(SeasonEventKind.LeafOut, new(2026, 5, 2), Basis.Climatology, 12)],
                ForecastIssued = Instant.FromUtc(2026, 1, 3, 9, 15),
            };
            var decision = Decide(signals, facts);

            var again = DecisionRecord.Replay(decision.Content.ToArray(), Snapshot.Write(signals), [Pack]);

            Assert.Equal(decision.Content.AsSpan(), again.Content.AsSpan());
            Assert.Equal(decision.Hash, again.Hash);
        });
    }

    [Fact]
    public void Snapshot_KeepsTheIntervalOfAnEvent()
    {
        SeasonEvent certain = new(SeasonEventKind.LeafOut, new(2025, 5, 4), Basis.SiteObservation);
        SeasonEvent predicted = new(
            SeasonEventKind.LeafOut, new(2026, 5, 2), Basis.Climatology, 12, new(2026, 4, 25), new(2026, 5, 9));
        var signals = Given.Signals((SignalKind.MinTemperatureC, [0])) with { Events = [certain, predicted] };

        var content = Snapshot.Write(signals);

        Assert.Equal([certain, predicted], Snapshot.Read(content).Events);
        Assert.Contains(
            """
            {"kind":"LeafOut","date":"2025-05-04","basis":"SiteObservation","years":0},
            {"kind":"LeafOut","date":"2026-05-02","basis":"Climatology","years":12,
            "earliest":"2026-04-25","latest":"2026-05-09"}
            """.ReplaceLineEndings(""),
            Encoding.UTF8.GetString(content),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Replay_RefusesAnotherSnapshot()
    {
        var decision = Decide(Given.Signals((SignalKind.MinTemperatureC, [0])), Given.HingeCut);
        var other = Snapshot.Write(Given.Signals((SignalKind.MinTemperatureC, [1])));

        var e = Assert.Throws<InvalidOperationException>(
            () => DecisionRecord.Replay(decision.Content.ToArray(), other, [Pack]));
        Assert.Contains(decision.SnapshotHash, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Replay_RefusesAMissingPack()
    {
        var signals = Given.Signals((SignalKind.MinTemperatureC, [0]));
        var decision = Decide(signals, Given.HingeCut);

        var e = Assert.Throws<InvalidOperationException>(
            () => DecisionRecord.Replay(decision.Content.ToArray(), Snapshot.Write(signals), []));
        Assert.Contains(Pack.Hash, e.Message, StringComparison.Ordinal);
    }

    private static DecisionRecord Decide(SignalSet signals, TaskFacts facts) => DecisionRecord.Of(
        new PointRules([Pack], signals).Evaluate(facts), signals.Span, DecisionRecord.HashOf(Snapshot.Write(signals)));
}
