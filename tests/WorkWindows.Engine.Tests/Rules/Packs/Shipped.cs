using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>The shipped packs on days whose weather no rule minds, unless a test says otherwise.</summary>
internal static class Shipped
{
    private static readonly ImmutableArray<RulePack> Packs = ShippedPacks.Read();

    // 25 °F to 32 °F, a light air, eight hours of daylight, no rain, no alert: nothing closes or limits.
    private static readonly ImmutableSortedDictionary<SignalKind, double> Mild = new Dictionary<SignalKind, double>
    {
        [SignalKind.MinTemperatureC] = DegC(25),
        [SignalKind.MaxTemperatureC] = DegC(32),
        [SignalKind.WindMps] = Mps(5),
        [SignalKind.GustMps] = Mps(5),
        [SignalKind.DarkShiftMinutes] = 0,
        [SignalKind.LightShiftMinutes] = 480,
        [SignalKind.PrecipitationMm] = 0,
        [SignalKind.MinHumidityPercent] = 45,
        [SignalKind.WindChillC] = DegC(25),
        [SignalKind.FrozenGroundIndexC] = 0,
        [SignalKind.RedFlagAlert] = 0,
        [SignalKind.WindAlert] = 0,
        [SignalKind.WinterStormAlert] = 0,
        [SignalKind.ThunderstormAlert] = 0,
    }.ToImmutableSortedDictionary();

    public static double DegC(double degF) => (degF - 32) / 1.8;

    public static double Mps(double mph) => mph * 0.44704;

    /// <summary>A task over a span of mild days.</summary>
    public static TaskEvaluation Over(DaySpan span, TaskFacts task, LocalDate? leafOut = null) =>
        Evaluate(span, task, [], leafOut);

    /// <summary>A task on February days with one signal as given, one value a day, after three mild days.</summary>
    public static TaskEvaluation InFebruary(TaskFacts task, SignalKind kind, params double[] values)
    {
        var span = new DaySpan(new(2026, 1, 29), values.Length + 3);
        return Evaluate(span, task, new() { [kind] = [Mild[kind], Mild[kind], Mild[kind], .. values] }, null);
    }

    /// <summary>The initials of the days' states, from the first day of February.</summary>
    public static string FebruaryStates(TaskFacts task, SignalKind kind, params double[] values)
    {
        var evaluation = InFebruary(task, kind, values);
        var first = new LocalDate(2026, 2, 1);
        return string.Concat(values.Select((_, day) => evaluation[first.PlusDays(day)].ToString()[0]));
    }

    /// <summary>The state of a day after as many mild days as the rules look back on.</summary>
    public static DayState StateOn(LocalDate date, TaskFacts task) =>
        Over(DaySpan.Between(Lookback.Before(date, Packs), date), task)[date];

    public static Truth Says(string rule, TaskEvaluation evaluation, LocalDate date) =>
        Explanation.Of(evaluation, date).Verdicts.Single(verdict => verdict.Rule.Id == rule).Truth;

    public static TaskEvaluation Evaluate(
        DaySpan span, TaskFacts task, Dictionary<SignalKind, double[]> values, LocalDate? leafOut)
    {
        var signals = Mild.Keys.Union(values.Keys).Select(kind => Given.Signal(
            kind, span, values.GetValueOrDefault(kind) ?? [.. Enumerable.Repeat(Mild[kind], span.Count)]));
        SeasonEvent[] events = leafOut is { } date ? [new(SeasonEventKind.LeafOut, date, Basis.Observed)] : [];
        return new PointRules(Packs, SignalSet.Of("test", span, signals, events)).Evaluate(task);
    }
}
