using CsCheck;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Engine.Tests.Evaluation.Oracle;

/// <summary>The engine, with its sets of days, says what the simple evaluator says day by day.</summary>
public class OracleTests
{
    // At least 100,000 cases of one rule on one day in its weather.
    private const int RuleSamples = 2_000;
    private const int TaskSamples = 1_000;

    [Fact]
    public void Of_SaysOfEveryRuleAndDayWhatTheSimpleEvaluatorSays() =>
        Gen.Select(RandomRules.Pack, RandomRules.Weather.Signals).Sample(
            (pack, signals) => pack.Rules.All(rule =>
            {
                var days = ConditionDays.Of(rule.When, signals);
                return AllDays(signals.Span, day =>
                    days[day] == SimpleEvaluator.Of(rule.When, signals, signals.Span[day]));
            }),
            iter: RuleSamples);

    [Fact]
    public void Evaluate_GivesEveryDayTheStateThatTheSimpleEvaluatorGives() =>
        Gen.Select(RandomRules.Pack, RandomRules.Weather.Signals, RandomRules.Facts).Sample(
            (pack, signals, facts) =>
            {
                var evaluation = new PointRules([pack], signals).Evaluate(facts);
                return AllDays(signals.Span, day =>
                    evaluation[signals.Span[day]] == SimpleEvaluator.StateOf(
                        [pack], signals, facts, signals.Span[day]));
            },
            iter: TaskSamples);

    private static bool AllDays(DaySpan span, Func<int, bool> agrees) => Enumerable.Range(0, span.Count).All(agrees);
}
