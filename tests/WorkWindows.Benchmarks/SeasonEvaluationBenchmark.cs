using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
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

    private static readonly string[] States = ["MI", "WI", "MN", "IA", "IL", "IN", "OH", "PA", "NY", "MO"];

    private ImmutableArray<RulePack> packs;
    private SignalSet[] signals = [];
    private TaskFacts[] tasks = [];

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
        tasks = [.. Enumerable.Range(0, Tasks).Select(task => Task(task, random))];
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
        };
        var leafOut = new SeasonEvent(SeasonEventKind.LeafOut, new LocalDate(2024, 4, 15).PlusDays(random.Next(30)), Basis.Observed);
        return SignalSet.Of(name, span, signals, [leafOut]);

        double Noise(double width) => (random.NextDouble() - 0.5) * 2 * width;

        Signal Of(SignalKind kind, Func<int, double> value)
        {
            // One value in fifty is missing, as in a real record.
            double[] values = [.. Enumerable.Range(0, span.Count).Select(day => random.Next(50) == 0 ? double.NaN : value(day))];
            return new(kind, span, [.. values], [.. values.Select(v => double.IsNaN(v) ? Basis.Missing : Basis.Observed)]);
        }
    }

    private static TaskFacts Task(int number, Random random)
    {
        var practice = PracticeCatalogue.All[random.Next(PracticeCatalogue.All.Length)];
        ImmutableSortedSet<SpeciesGroup>? species = random.Next(5) == 0
            ? null
            : [(SpeciesGroup)random.Next(9), (SpeciesGroup)random.Next(9)];
        ImmutableSortedSet<SiteFlag> flags = random.Next(2) == 0 ? [] : [SiteFlag.QuietOnDeerOpeners];
        return new($"T-{number}", practice, States[number % Points % States.Length], "26065", species, flags);
    }
}
