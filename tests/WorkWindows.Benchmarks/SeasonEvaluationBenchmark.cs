using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Benchmarks;

/// <summary>The shipped packs over 10,000 tasks of 200 weather points and 366 days: 3,660,000 task-days.</summary>
[InProcess]
[MemoryDiagnoser]
public class SeasonEvaluationBenchmark
{
    private const int Tasks = 10_000;
    private const int Points = 200;
    private const int Days = 366;
    private const int Explained = 20;

    private ImmutableArray<RulePack> packs;
    private SignalSet[] signals = [];
    private TaskFacts[] tasks = [];
    private TaskEvaluation[] evaluated = [];

    [GlobalSetup]
    public void Setup()
    {
        packs = ShippedPacks.Read();
        var rules = packs.Sum(pack => pack.Rules.Length);
        if (rules < 25)
            throw new InvalidOperationException($"The packs have {rules} rules; the measure asks for at least 25.");
        var random = new Random(20260125);
        var span = new DaySpan(new LocalDate(2024, 1, 1), Days);
        signals = [.. Enumerable.Range(0, Points).Select(point => Point($"P{point}", span, random))];
        tasks = [.. Enumerable.Range(0, Tasks).Select(task => GeneratedTask.Of(task, Points, random))];
        var rulesOfPoint = new PointRules(packs, signals[0]);
        evaluated = [.. Enumerable.Range(0, Explained).Select(task => rulesOfPoint.Evaluate(tasks[task * Points]))];
    }

    [Benchmark]
    public int Evaluate()
    {
        var workable = 0;
        for (var point = 0; point < Points; point++)
        {
            // Fresh each time: the figure includes compiling the rules to days.
            var rules = new PointRules(packs, signals[point]);
            for (var task = point; task < Tasks; task += Points)
                workable += rules.Evaluate(tasks[task]).Workable.Count;
        }
        return workable;
    }

    /// <summary>Why a day is as it is and what alone would change it, for twenty tasks on one day each.</summary>
    [Benchmark(OperationsPerInvoke = Explained)]
    public int Explain()
    {
        var found = 0;
        for (var task = 0; task < Explained; task++)
        {
            var day = signals[0].Span[30 + 15 * task];
            found += Explanation.Of(evaluated[task], day).Verdicts.Length + SingleChanges.Of(evaluated[task], day).Length;
        }
        return found;
    }

    private static SignalSet Point(string name, DaySpan span, Random random)
    {
        var signals = new[]
        {
            Of(SignalKind.MinTemperatureC, day => -10 - 15 * Math.Cos(day * 2 * Math.PI / Days) + Noise(8)),
            Of(SignalKind.MaxTemperatureC, day => 12 - 15 * Math.Cos(day * 2 * Math.PI / Days) + Noise(8)),
            Of(SignalKind.WindMps, _ => 5 + Noise(4)),
            Of(SignalKind.GustMps, _ => 9 + Noise(6)),
            Of(SignalKind.DarkShiftMinutes, day => Math.Max(0, 60 * Math.Cos(day * 2 * Math.PI / Days))),
            Of(SignalKind.LightShiftMinutes, day => 540 - Math.Max(0, 60 * Math.Cos(day * 2 * Math.PI / Days))),
            Of(SignalKind.PrecipitationMm, _ => Math.Max(0, Noise(12))),
            Of(SignalKind.SnowDepthCm, day => Math.Max(0, 20 * Math.Cos(day * 2 * Math.PI / Days) + Noise(10))),
            Of(SignalKind.MinHumidityPercent, _ => 50 + Noise(30)),
            Of(SignalKind.ThunderChancePercent, _ => Math.Max(0, Noise(40))),
            Of(SignalKind.HeatIndexC, day => 12 - 20 * Math.Cos(day * 2 * Math.PI / Days) + Noise(8)),
            Of(SignalKind.WindChillC, day => -14 - 15 * Math.Cos(day * 2 * Math.PI / Days) + Noise(8)),
            Of(SignalKind.FrozenGroundIndexC, day => Math.Max(0, 100 * Math.Cos(day * 2 * Math.PI / Days) + Noise(20))),
            Of(SignalKind.FrostDepthCm, day => Math.Max(0, 25 * Math.Cos(day * 2 * Math.PI / Days) + Noise(5))),
            Of(SignalKind.RedFlagAlert, _ => random.Next(40) == 0 ? 1 : 0),
            Of(SignalKind.WindAlert, _ => random.Next(40) == 0 ? 1 : 0),
            Of(SignalKind.WinterStormAlert, _ => random.Next(40) == 0 ? 1 : 0),
            Of(SignalKind.ThunderstormAlert, _ => random.Next(40) == 0 ? 1 : 0),
        };
        var leafOut = new SeasonEvent(
            SeasonEventKind.LeafOut, new LocalDate(2024, 4, 15).PlusDays(random.Next(30)), Basis.Observed);
        return SignalSet.Of(name, span, signals, [leafOut]);

        double Noise(double width) => (random.NextDouble() - 0.5) * 2 * width;

        Signal Of(SignalKind kind, Func<int, double> value)
        {
            // One value in fifty is missing, as in a real record.
            double[] values = [.. Enumerable.Range(0, span.Count).Select(
                day => random.Next(50) == 0 ? double.NaN : value(day))];
            return new(
                kind, span, [.. values], [.. values.Select(v => double.IsNaN(v) ? Basis.Missing : Basis.Observed)]);
        }
    }
}
