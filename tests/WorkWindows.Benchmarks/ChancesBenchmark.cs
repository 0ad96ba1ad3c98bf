using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Benchmarks;

/// <summary>The shipped packs over 1,000 tasks of 100 weather points, thirty past years and 366 days.</summary>
[InProcess]
[MemoryDiagnoser]
public class ChancesBenchmark
{
    private const int Tasks = 1_000;
    private const int Points = 100;
    private const int Days = 366;

    private static readonly LocalDate Today = new(2026, 1, 25);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/Detroit"];
    private static readonly WeatherPoint Point = new("P", 43, -85);

    private ImmutableArray<RulePack> packs;
    private DailySeries record = DailySeries.Empty;
    private PastWeather past = new(DailySeries.Empty);
    private SignalSet known = null!;
    private Ensemble[] ensembles = [];
    private TaskFacts[] tasks = [];

    /// <summary>Bytes that the signals of all points hold.</summary>
    public long SignalBytes { get; private set; }

    [GlobalSetup]
    public void Setup()
    {
        packs = ShippedPacks.Read();
        var random = new Random(20260125);
        record = DailySeries.Of(GeneratedRecord.Of(DaySpan.Between(new(1995, 1, 1), Today.PlusDays(-1)), random));
        past = new(record);
        var span = DaySpan.Between(Lookback.Before(Today, packs), Today.PlusDays(Days - 1));
        known = SignalSetBuilder.Build(Point, span, record, null, Zone, WorkShift.Default, AlertReport.None);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        ensembles = [.. Enumerable.Range(0, Points).Select(_ => Signals())];
        SignalBytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        Console.WriteLine($"// Signals of {Points} points hold {SignalBytes / 1e6:0} MB.");
        tasks = [.. Enumerable.Range(0, Tasks).Select(task => GeneratedTask.Of(task, Points, random))];
    }

    /// <summary>
    /// The chances of every task, from signals that are there; the rules are compiled anew for each point.
    /// </summary>
    [Benchmark]
    public double Evaluate()
    {
        var workableDays = 0.0;
        for (var point = 0; point < Points; point++)
        {
            var rules = new ChanceRules(packs, ensembles[point]);
            for (var task = point; task < Tasks; task += Points)
                workableDays += rules.Of(tasks[task], new(Today, Days)).WorkableDays ?? 0;
        }
        return workableDays;
    }

    /// <summary>The signals of one point in thirty years.</summary>
    [Benchmark]
    public Ensemble Signals() => Ensemble.Of(past, known, null, Point.LatitudeDeg);

    /// <summary>What is prepared once a record.</summary>
    [Benchmark]
    public PastWeather Prepare() => new(record);
}
