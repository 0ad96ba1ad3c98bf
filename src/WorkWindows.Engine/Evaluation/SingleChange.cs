using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>One input that by itself would make a day another.</summary>
/// <param name="What">The input, such as 'minimum temperature'.</param>
/// <param name="Is">What it is, or that it is not known.</param>
/// <param name="WouldBe">What it would have to be.</param>
/// <param name="State">The state that the day would then have.</param>
public sealed record SingleChange(string What, string Is, string WouldBe, DayState State);

/// <summary>
/// Finds the single changes of input that would change a day's state: the smallest one of each reading of the day, of
/// the date of each event, and of what nobody has said of the parcel.
/// </summary>
public static class SingleChanges
{
    // A step past a limit that a reading must do more than reach: readings are whole numbers or tenths.
    private const double StepPast = 0.1;

    /// <summary>At most one change for each input and state that it would lead to, workable states first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the evaluation's span.</exception>
    public static ImmutableArray<SingleChange> Of(TaskEvaluation evaluation, LocalDate day)
    {
        var index = evaluation.IndexOf(day);
        var state = evaluation.StateAt(index);
        return
        [
            .. Readings(evaluation, index)
                .Concat(Alerts(evaluation, index))
                .Concat(Events(evaluation, index))
                .Concat(Inventory(evaluation, index))
                .Where(change => change.State != state)
                .DistinctBy(change => (change.What, change.State))
                .OrderBy(change => change.State),
        ];
    }

    private static IEnumerable<SingleChange> Readings(TaskEvaluation evaluation, int day)
    {
        foreach (var limits in evaluation.Rules.SelectMany(rule => LimitsIn(rule.Rule.When)).Distinct()
            .GroupBy(limit => limit.Signal))
        {
            if (evaluation.Signals[limits.Key] is not { } signal || signal.Bases[day] == Basis.Calendar)
                continue;
            var now = signal.Values[day];
            double? known = double.IsNaN(now) ? null : now;
            foreach (var (limit, value) in limits.SelectMany(Sides).OrderBy(side => Distance(side.InSignalUnit, now)))
            {
                var unit = limit.Threshold.Unit;
                yield return new(
                    Wording.Of(signal.Kind), Wording.Number(known is { } v ? unit.FromSignalUnit(v) : null, unit),
                    Wording.Limit(limit), StateWith(evaluation, signal.With(day, value), day));
            }
        }
    }

    private static double Distance(double value, double now) =>
        double.IsNaN(now) ? Math.Abs(value) : Math.Abs(value - now);

    /// <summary>A value just on each side of a limit, with the comparison that it satisfies.</summary>
    private static IEnumerable<(Compare Limit, double InSignalUnit)> Sides(Compare limit)
    {
        var other = limit with { Relation = ConditionDays.Opposite(limit.Relation) };
        foreach (var side in new[] { limit, other })
        {
            var step = side.Relation switch
            {
                Relation.AtLeast or Relation.AtMost => 0,
                Relation.Above => StepPast,
                Relation.Below => -StepPast,
            };
            yield return (side, side.Threshold.Unit.ToSignalUnit(side.Threshold.Value + step));
        }
    }

    private static IEnumerable<SingleChange> Alerts(TaskEvaluation evaluation, int day)
    {
        foreach (var kind in evaluation.Rules.SelectMany(rule => AlertsIn(rule.Rule.When)).Distinct())
        {
            if (evaluation.Signals[kind] is not { } signal)
                continue;
            var now = signal.Values[day] switch
            {
                double.NaN => Wording.NotKnown,
                0 => Wording.NoAlert,
                _ => Wording.AlertInForce,
            };
            foreach (var value in new[] { 0, 1 })
            {
                yield return new(Wording.Of(kind), now, value == 0 ? Wording.NoAlert : Wording.AlertInForce,
                    StateWith(evaluation, signal.With(day, value), day));
            }
        }
    }

    private static IEnumerable<SingleChange> Events(TaskEvaluation evaluation, int day)
    {
        var date = evaluation.Span[day];
        foreach (var kind in Enum.GetValues<SeasonEventKind>())
        {
            var now = evaluation.Signals.Event(kind, date.Year) is { } known
                ? Wording.Of(known.Date)
                : Wording.NotKnown;
            foreach (var moved in new[] { date, date.PlusDays(1) })
            {
                var signals = evaluation.Signals.With([new SeasonEvent(kind, moved, Basis.SiteObservation)]);
                yield return new(Wording.Of(kind), now, moved == date ? "by this day" : "after this day",
                    evaluation.StateAt(day, signals, condition => ConditionParts.Mentions(condition, kind)));
            }
        }
    }

    private static IEnumerable<SingleChange> Inventory(TaskEvaluation evaluation, int day)
    {
        if (evaluation.Facts.SpeciesGroups is not null)
            yield break;
        var asked = evaluation.Rules.Where(rule => rule.Applies == Truth.Unknown)
            .SelectMany(rule => rule.Rule.Scope.SpeciesGroups).Distinct().Order();
        var without = new PointRules(evaluation.Packs, evaluation.Signals)
            .Evaluate(evaluation.Facts with { SpeciesGroups = [] });
        yield return new("the stand's species", Wording.NotKnown,
            $"none of {string.Join(", ", asked.Select(Wording.Of))}", without.StateAt(day));
    }

    private static DayState StateWith(TaskEvaluation evaluation, Signal changed, int day) => evaluation.StateAt(
        day, evaluation.Signals.With(changed), condition => ConditionParts.Mentions(condition, changed.Kind));

    private static IEnumerable<Compare> LimitsIn(Condition condition) =>
        ConditionParts.Leaves(condition).OfType<Compare>();

    private static IEnumerable<SignalKind> AlertsIn(Condition condition) =>
        ConditionParts.Leaves(condition).OfType<InForce>().Select(alert => alert.Alert);
}
