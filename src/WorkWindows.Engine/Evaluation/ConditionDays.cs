using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>On which days of a set of signals a condition holds.</summary>
public static class ConditionDays
{
    // Thresholds and readings go through the same unit conversions, which leave errors of about 1e-14; a reading equal
    // to the threshold must count as equal.
    private const double Tolerance = 1e-6;

    private const double InForceValue = 1;

    /// <returns>An answer for every day of the signals' span; unknown where an input is missing and matters.</returns>
    public static Tri Of(Condition condition, SignalSet signals) => condition switch
    {
        AllOf all => all.Parts.Select(part => Of(part, signals)).Aggregate((left, right) => left & right),
        AnyOf any => any.Parts.Select(part => Of(part, signals)).Aggregate((left, right) => left | right),
        Not not => !Of(not.Part, signals),
        InRange inRange => CalendarDays.Days(inRange.Range, signals),
        InForce inForce => Of(inForce.Alert, Relation.AtLeast, InForceValue, signals),
        Compare compare => Of(compare.Signal, compare.Relation, compare.Threshold.InSignalUnit, signals),
        InARow row => Of(row.Each, signals).Run(row.Days),
        Latched latched => Latch(Of(latched.Starts, signals), Of(latched.Ends, signals)),
        Sum sum => Of(sum, Sums.Of(sum, signals)),
        Onset onset => Since(Of(onset.First, signals), onset.Within, signals),
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition that can be evaluated."),
    };

    /// <summary>
    /// What a condition says of one day: as <see cref="Of(Condition, SignalSet)"/>, without the other days.
    /// </summary>
    internal static Truth On(Condition condition, SignalSet signals, int day)
    {
        if (ConditionParts.RemembersWithoutBound(condition))
            return Of(condition, signals)[day];
        var first = Math.Max(0, signals.Span.IndexOf(Lookback.Of(condition, signals.Span[day])));
        // A day's heat may hang on the night after it.
        var last = Math.Min(day + 1, signals.Span.Count - 1);
        return Of(condition, signals.Slice(first, last - first + 1, ConditionParts.Signals(condition)))[day - first];
    }

    /// <summary>Whether a value, in the unit of the signals, stands in a relation to a limit; never for NaN.</summary>
    internal static bool Stands(double value, Relation relation, double limit) => relation switch
    {
        Relation.Below => value < limit - Tolerance,
        Relation.AtMost => value <= limit + Tolerance,
        Relation.AtLeast => value >= limit - Tolerance,
        Relation.Above => value > limit + Tolerance,
    };

    internal static Relation Opposite(Relation relation) => relation switch
    {
        Relation.Below => Relation.AtLeast,
        Relation.AtMost => Relation.Above,
        Relation.AtLeast => Relation.Below,
        Relation.Above => Relation.AtMost,
    };

    private static Tri Of(SignalKind kind, Relation relation, double limit, SignalSet signals)
    {
        var length = signals.Span.Count;
        if (signals[kind] is not { } signal)
            return new(DayBits.None(length), DayBits.None(length));
        // A value on one side of the bound holds, on the other it fails; NaN is on neither.
        var isLow = relation is Relation.Below or Relation.AtMost;
        var (low, high) = relation is Relation.Below or Relation.AtLeast
            ? DayBits.Around(signal.Values.AsSpan(), limit - Tolerance, countsAsLow: false)
            : DayBits.Around(signal.Values.AsSpan(), limit + Tolerance, countsAsLow: true);
        return isLow ? new(low, high) : new(high, low);
    }

    private static Tri Of(Sum sum, RunningSum[] sums)
    {
        var limit = sum.Threshold.InSignalUnit;
        // What is missing can only add: a sum that is high enough without it stays so.
        var grows = sum.Relation is Relation.AtLeast or Relation.Above;
        return new(
            DayBits.Where(sums.Length, day => Decided(day, grows) && Stands(sums[day].Known, sum.Relation, limit)),
            DayBits.Where(sums.Length, day =>
                Decided(day, !grows) && Stands(sums[day].Known, Opposite(sum.Relation), limit)));

        bool Decided(int day, bool missingDoesNotMatter) => missingDoesNotMatter || sums[day].MissingDays == 0;
    }

    /// <summary>Between its limits a state stays what it was; after a gap there it cannot be known.</summary>
    private static Tri Latch(Tri starts, Tri ends)
    {
        var state = Truth.Unknown;
        var states = new Truth[starts.Length];
        for (var day = 0; day < states.Length; day++)
        {
            states[day] = state = (starts[day], ends[day]) switch
            {
                (Truth.Holds, _) => Truth.Holds,
                (_, Truth.Holds) => Truth.Fails,
                (Truth.Fails, Truth.Fails) => state,
                _ => Truth.Unknown,
            };
        }
        return Of(states);
    }

    private static Tri Since(Tri first, CalendarRange within, SignalSet signals)
    {
        var states = new Truth[first.Length];
        foreach (var (from, to) in CalendarDays.Turns(within, signals))
        {
            // Of the days before the span nothing is known.
            var state = from < 0 ? Truth.Unknown : Truth.Fails;
            for (var day = Math.Max(from, 0); day <= Math.Min(to, states.Length - 1); day++)
            {
                state = Either(state, first[day]);
                // The turns of a range of more than a year overlap.
                states[day] = Either(states[day], state);
            }
        }
        return Of(states);
    }

    private static Truth Either(Truth left, Truth right) => (left, right) switch
    {
        (Truth.Holds, _) or (_, Truth.Holds) => Truth.Holds,
        (Truth.Unknown, _) or (_, Truth.Unknown) => Truth.Unknown,
        _ => Truth.Fails,
    };

    private static Tri Of(Truth[] states) => new(
        DayBits.Where(states.Length, day => states[day] == Truth.Holds),
        DayBits.Where(states.Length, day => states[day] == Truth.Fails));
}
