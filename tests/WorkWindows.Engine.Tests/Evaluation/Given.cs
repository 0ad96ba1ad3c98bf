using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

/// <summary>Small inputs for evaluations.</summary>
internal static class Given
{
    public static readonly LocalDate First = new(2026, 1, 1);

    public static TaskFacts HingeCut { get; } = Task("hinge-cut");

    public static TaskFacts Task(
        string practice, string state = "MI", SpeciesGroup[]? species = null, params SiteFlag[] flags) =>
        new("T-1", PracticeCatalogue.Find(practice)!, state, "26065", species is null ? null : [.. species], [.. flags]);

    public static SignalSet Signals(params (SignalKind Kind, double[] Values)[] signals)
    {
        var span = new DaySpan(First, signals[0].Values.Length);
        return SignalSet.Of("test", span, signals.Select(s => Signal(s.Kind, span, s.Values)), []);
    }

    public static Signal Signal(SignalKind kind, DaySpan span, double[] values, Basis basis = Basis.Observed) =>
        new(kind, span, [.. values], [.. values.Select(value => double.IsNaN(value) ? Basis.Missing : basis)]);

    public static RulePack Pack(params string[] rules) => RulePackReader.Read(
        "pack: test\nversion: \"1\"\ntitle: Test\nrules:\n" + string.Concat(rules.Select((rule, index) =>
            $"  - id: r{index}\n    title: Rule {index}\n    because: It is so.\n    measure: Take care.\n"
            + "    authority: common-practice\n    source: { title: test }\n    " + rule + "\n")));

    public static string Rule(string effect, string when, string scope = "traits: [chain-saw]") =>
        $"effect: {effect}\n    scope: {{ {scope} }}\n    when: {{ {when} }}";

    public static string States(ImmutableArray<RulePack> packs, SignalSet signals, TaskFacts facts)
    {
        var evaluation = new PointRules(packs, signals).Evaluate(facts);
        return string.Concat(Enumerable.Range(0, signals.Span.Count)
            .Select(day => evaluation[signals.Span[day]].ToString()[0]));
    }
}
