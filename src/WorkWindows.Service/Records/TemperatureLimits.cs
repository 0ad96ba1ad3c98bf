using System.Globalization;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Records;

/// <summary>A temperature at which rules change what they say.</summary>
/// <param name="ValueF">°F.</param>
/// <param name="Rules">What they say there, as in 'minimum temperature below 20 °F closes: …'.</param>
public sealed record TemperatureLimit(double ValueF, IReadOnlyList<string> Rules)
{
    public string Label => $"{ValueF.ToString("0.#", CultureInfo.InvariantCulture)} °F";
}

/// <summary>Picks the limits that charts draw from the rules themselves.</summary>
public static class TemperatureLimits
{
    /// <summary>
    /// The limits of minimum and maximum temperature in the rules that close, limit or favour some of the tasks, or may
    /// do so, ascending.
    /// </summary>
    /// <param name="packs">The rules.</param>
    /// <param name="tasks">The tasks.</param>
    public static IReadOnlyList<TemperatureLimit> Of(
        IEnumerable<RulePack> packs, IReadOnlyCollection<TaskFacts> tasks) =>
    [
        .. packs.SelectMany(pack => pack.Rules)
            .Where(rule => rule.Effect is Effect.Closes or Effect.Limits or Effect.Favours
                && tasks.Any(task => ScopeMatch.Of(rule.Scope, task) != Truth.Fails))
            .SelectMany(rule => RuleLimits.Of(rule, SignalKind.MinTemperatureC, SignalKind.MaxTemperatureC)
                .Select(compare => (ValueF: InF(compare.Threshold), Says: Words(rule, compare))))
            .GroupBy(limit => limit.ValueF).OrderBy(limit => limit.Key)
            .Select(limit => new TemperatureLimit(limit.Key, [.. limit.Select(rule => rule.Says).Distinct()])),
    ];

    private static double InF(Threshold threshold) => threshold.Unit == RuleUnit.DegF
        ? threshold.Value
        : Math.Round(RuleUnit.DegF.FromSignalUnit(threshold.InSignalUnit), 1);

    private static string Words(Rule rule, Compare compare) =>
        $"{Wording.Of(compare.Signal)} {Wording.Of(compare.Relation)} "
        + $"{compare.Threshold.Value.ToString("0.#", CultureInfo.InvariantCulture)} {compare.Threshold.Unit.Symbol()} "
        + $"{Wording.Of(rule.Effect)}: {rule.Title}";
}
