using NodaTime;
using UnitsNet;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation.Oracle;

/// <summary>
/// A second evaluator, as simple as it can be: one rule, one day, no sets of days, nothing remembered. It shares with
/// the engine only the types of rules and signals and the published formula of degree-days.
/// </summary>
internal static class SimpleEvaluator
{
    public static DayState StateOf(IReadOnlyList<RulePack> packs, SignalSet signals, TaskFacts facts, LocalDate day)
    {
        var rules = packs.SelectMany(pack => pack.Rules).ToArray();
        var (closed, unknown, limited) = (false, false, false);
        foreach (var rule in rules)
        {
            var applies = Applies(rule.Scope, facts);
            var truth = Of(rule.When, signals, day);
            if (applies == Truth.Fails || truth == Truth.Fails)
                continue;
            var excepted = facts.Overrides.Any(e => e.RuleId == rule.Id && e.First <= day && day <= e.Last);
            var lifted = excepted || rules.Any(other => other.Lifts == rule.Id
                && Applies(other.Scope, facts) == Truth.Holds && Of(other.When, signals, day) == Truth.Holds);
            if (lifted && rule.Authority != Authority.Regulation && !rule.LifeSafety)
            {
                limited |= excepted && rule.Effect is Effect.Closes or Effect.Limits;
                continue;
            }
            closed |= rule.Effect == Effect.Closes && truth == Truth.Holds && applies == Truth.Holds;
            unknown |= rule.Effect == Effect.Closes && (truth == Truth.Unknown || applies == Truth.Unknown);
            limited |= rule.Effect == Effect.Limits;
        }
        return closed ? DayState.Closed : unknown ? DayState.Unknown : limited ? DayState.Limited : DayState.Open;
    }

    public static Truth Of(Condition condition, SignalSet signals, LocalDate day) => condition switch
    {
        AllOf all => Least(all.Parts.Select(part => Of(part, signals, day))),
        AnyOf any => Reverse(Least(any.Parts.Select(part => Reverse(Of(part, signals, day))))),
        Not not => Reverse(Of(not.Part, signals, day)),
        InRange inRange => SimpleCalendar.Contains(inRange.Range, signals, day),
        InForce alert => Value(alert.Alert, signals, day) is { } value ? Known(value > 0) : Truth.Unknown,
        Compare compare => Of(compare, signals, day),
        InARow row => Least(Enumerable.Range(0, row.Days).Select(back => Of(row.Each, signals, day.PlusDays(-back)))),
        Latched latched => State(latched, signals, day),
        TotalOver total => OfSum(total, Enumerable.Range(0, total.Days)
            .Select(back => Value(total.Signal, signals, day.PlusDays(-back)))),
        HeatSince heat => OfSum(heat, DaysFrom(SimpleCalendar.LastBefore(heat.Since, day), day)
            .Select(date => Heat(heat.Heat, signals, date))),
        Onset onset => HasCome(onset, signals, day),
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition."),
    };

    private static Truth Of(Compare compare, SignalSet signals, LocalDate day) =>
        Value(compare.Signal, signals, day) is { } value
            ? Known(Stands(value, compare.Relation, InSignalUnit(compare.Threshold)))
            : Truth.Unknown;

    private static Truth State(Latched latched, SignalSet signals, LocalDate day)
    {
        var (starts, ends) = (Of(latched.Starts, signals, day), Of(latched.Ends, signals, day));
        return starts == Truth.Holds ? Truth.Holds
            : ends == Truth.Holds ? Truth.Fails
            : starts == Truth.Unknown || ends == Truth.Unknown || day <= signals.Span.First ? Truth.Unknown
            : State(latched, signals, day.PlusDays(-1));
    }

    private static Truth HasCome(Onset onset, SignalSet signals, LocalDate day)
    {
        var turns = SimpleCalendar.TurnsAt(onset.Within, signals, day).ToArray();
        if (turns.Length == 0)
            return Truth.Fails;
        var first = turns.Min(turn => turn.First);
        var truths = DaysFrom(first, day)
            .Select(date => date < signals.Span.First ? Truth.Unknown : Of(onset.First, signals, date));
        return Reverse(Least(truths.Select(Reverse)));
    }

    private static Truth OfSum(Sum sum, IEnumerable<double?> values)
    {
        var all = values.ToArray();
        var known = all.Sum(value => value ?? 0);
        var limit = InSignalUnit(sum.Threshold);
        if (all.All(value => value is not null))
            return Known(Stands(known, sum.Relation, limit));
        // What is missing could be nothing or any amount.
        var (least, most) = (Stands(known, sum.Relation, limit), Stands(double.MaxValue, sum.Relation, limit));
        return least == most ? Known(least) : Truth.Unknown;
    }

    private static double? Heat(HeatCount heat, SignalSet signals, LocalDate day)
    {
        var min = Value(SignalKind.MinTemperatureC, signals, day);
        var max = Value(SignalKind.MaxTemperatureC, signals, day);
        var isDouble = heat.Method is DegreeDayMethod.DoubleSine or DegreeDayMethod.DoubleTriangle;
        var next = isDouble ? Value(SignalKind.MinTemperatureC, signals, day.PlusDays(1)) : 0;
        return min is null || max is null || next is null || min > max
            ? null
            : DegreeDays.Of(heat.Method, min.Value, max.Value, next.Value, InSignalUnit(heat.Base),
                heat.Upper is { } upper ? InSignalUnit(upper) : double.PositiveInfinity);
    }

    private static Truth Applies(Scope scope, TaskFacts facts)
    {
        var traits =
            Enum.GetValues<PracticeTraits>().Where(trait => trait != 0 && scope.Traits.HasFlag(trait)).ToArray();
        if ((scope.Practices.Count > 0 && !scope.Practices.Contains(facts.Practice.Id))
            || (traits.Length > 0 && !traits.Any(trait => facts.Practice.Traits.HasFlag(trait)))
            || (scope.States.Count > 0 && !scope.States.Contains(facts.State))
            || (scope.Counties.Count > 0 && !scope.Counties.Contains(facts.CountyFips))
            || (scope.SiteFlags.Count > 0 && !scope.SiteFlags.Any(facts.SiteFlags.Contains)))
        {
            return Truth.Fails;
        }
        var species = scope.SpeciesGroups.Count == 0 ? Truth.Holds
            : facts.SpeciesGroups is not { } present ? Truth.Unknown
            : Known(scope.SpeciesGroups.Any(present.Contains));
        var organization = scope.Organizations.Count == 0 ? Truth.Holds
            : facts.Organization is not { } name ? Truth.Unknown
            : Known(scope.Organizations.Contains(name));
        return Least([species, organization]);
    }

    private static double? Value(SignalKind kind, SignalSet signals, LocalDate day) =>
        signals[kind] is { } signal && signals.Span.Contains(day)
        && signal.Values[Period.DaysBetween(signals.Span.First, day)] is var value && !double.IsNaN(value)
            ? value
            : null;

    private static bool Stands(double value, Relation relation, double limit)
    {
        var difference = Math.Abs(value - limit) < 1e-6 ? 0 : value - limit;
        return relation switch
        {
            Relation.Below => difference < 0,
            Relation.AtMost => difference <= 0,
            Relation.AtLeast => difference >= 0,
            Relation.Above => difference > 0,
        };
    }

    private static double InSignalUnit(Threshold threshold) => threshold.Unit switch
    {
        RuleUnit.DegF => (threshold.Value - 32) * 5 / 9,
        RuleUnit.Mph => Speed.FromMilesPerHour(threshold.Value).MetersPerSecond,
        RuleUnit.Hours => threshold.Value * 60,
        RuleUnit.WaterInches => threshold.Value * 25.4,
        RuleUnit.Inches => threshold.Value * 2.54,
        RuleUnit.DegreeDaysF => threshold.Value * 5 / 9,
        _ => threshold.Value,
    };

    private static IEnumerable<LocalDate> DaysFrom(LocalDate first, LocalDate last) =>
        Enumerable.Range(0, Period.DaysBetween(first, last) + 1).Select(first.PlusDays);

    private static Truth Least(IEnumerable<Truth> parts)
    {
        var all = parts.ToArray();
        return all.Contains(Truth.Fails) ? Truth.Fails : all.Contains(Truth.Unknown) ? Truth.Unknown : Truth.Holds;
    }

    private static Truth Reverse(Truth truth) => truth switch
    {
        Truth.Holds => Truth.Fails,
        Truth.Fails => Truth.Holds,
        Truth.Unknown => Truth.Unknown,
    };

    private static Truth Known(bool holds) => holds ? Truth.Holds : Truth.Fails;
}
