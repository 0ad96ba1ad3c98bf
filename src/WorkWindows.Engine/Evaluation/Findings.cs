using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>Reads off what a condition found on a day.</summary>
internal static class Findings
{
    /// <summary>The comparisons, sums and ranges of a condition, in the order of the file.</summary>
    public static IEnumerable<Finding> Of(Condition condition, SignalSet signals, int day) => condition switch
    {
        AllOf all => all.Parts.SelectMany(part => Of(part, signals, day)),
        AnyOf any => any.Parts.SelectMany(part => Of(part, signals, day)),
        Not not => Of(not.Part, signals, day),
        InRange inRange => [Of(inRange, signals, day)],
        InForce inForce => [Of(inForce, signals, day)],
        Compare compare => [Of(compare, compare, 1, signals, day)],
        InARow row => [Of(row, row.Each, row.Days, signals, day)],
        Latched latched => [Of(latched, signals, day)],
        Sum sum => [Of(sum, signals, day)],
        Onset onset => [Of(onset, signals, day), .. Of(onset.First, signals, day)],
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition that can be explained."),
    };

    private static Truth TruthOf(Condition condition, SignalSet signals, int day) =>
        ConditionDays.On(condition, signals, day);

    private static Basis BasisOf(SignalKind kind, SignalSet signals, int day) =>
        signals[kind]?.Bases[day] ?? Basis.Missing;

    private static double? ValueOf(SignalKind kind, RuleUnit unit, SignalSet signals, int day) =>
        BasisOf(kind, signals, day) == Basis.Missing ? null : unit.FromSignalUnit(signals[kind]!.Values[day]);

    private static AlertFinding Of(InForce inForce, SignalSet signals, int day) =>
        new(inForce.Alert, TruthOf(inForce, signals, day), BasisOf(inForce.Alert, signals, day));

    private static CalendarFinding Of(InRange inRange, SignalSet signals, int day)
    {
        var date = signals.Span[day];
        var (from, to, basis) = CalendarDays.Occurrence(inRange.Range, signals, date);
        var margin = date >= from ? Period.DaysBetween(date, to) : -Period.DaysBetween(date, from);
        var moving = (inRange.Range.From as EventDate ?? inRange.Range.To as EventDate)?.Event;
        return new(from, to, margin, TruthOf(inRange, signals, day), basis, moving);
    }

    private static SignalFinding Of(Condition whole, Compare each, int daysInARow, SignalSet signals, int day)
    {
        var run = 0;
        if (daysInARow > 1)
        {
            var held = ConditionDays.Of(each, signals);
            while (run <= day && held[day - run] == Truth.Holds)
                run++;
        }
        return new(each, ValueOf(each.Signal, each.Threshold.Unit, signals, day), daysInARow, run,
            TruthOf(whole, signals, day), BasisOf(each.Signal, signals, day));
    }

    private static LatchFinding Of(Latched latched, SignalSet signals, int day)
    {
        var states = ConditionDays.Of(latched, signals);
        var since = day;
        while (since > 0 && states[since - 1] == states[day])
            since--;
        var (signal, unit) = (latched.Starts.Signal, latched.Starts.Threshold.Unit);
        return new(latched, ValueOf(signal, unit, signals, day),
            states[day] == Truth.Unknown ? null : signals.Span[since], states[day], BasisOf(signal, signals, day));
    }

    private static SumFinding Of(Sum sum, SignalSet signals, int day)
    {
        var running = Sums.Of(sum, signals)[day];
        var signal = sum is TotalOver total ? total.Signal : SignalKind.MaxTemperatureC;
        return new(sum, sum.Threshold.Unit.FromSignalUnit(running.Known), running.MissingDays,
            Sums.FirstDay(sum, signals.Span[day]), TruthOf(sum, signals, day), BasisOf(signal, signals, day));
    }

    private static OnsetFinding Of(Onset onset, SignalSet signals, int day)
    {
        var (from, to, _) = CalendarDays.Occurrence(onset.Within, signals, signals.Span[day]);
        var states = ConditionDays.Of(onset, signals);
        LocalDate? came = null;
        if (states[day] == Truth.Holds)
        {
            var first = day;
            while (first > 0 && signals.Span[first] > from && states[first - 1] == Truth.Holds)
                first--;
            came = signals.Span[first];
        }
        return new(from, to, came, states[day]);
    }
}
