using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>
/// A condition with one of its numbers moved by a step, one comparison turned into its neighbour, or one part left out.
/// </summary>
/// <param name="What">What was changed.</param>
/// <param name="Condition">The changed condition.</param>
internal sealed record RuleMutant(string What, Condition Condition);

internal static class RuleMutants
{
    // Weekdays fall on the same dates again after 28 years.
    private static readonly SignalSet Calendar =
        SignalSet.Of("calendar", DaySpan.Between(new(2000, 1, 1), new(2028, 12, 31)), [], []);

    public static IEnumerable<RuleMutant> Of(Condition condition) => condition switch
    {
        AllOf all => Of(all.Parts, parts => new AllOf(parts)),
        AnyOf any => Of(any.Parts, parts => new AnyOf(parts)),
        Not not => Of(not.Part).Select(part => part with { Condition = new Not(part.Condition) }),
        InForce => [],
        InRange inRange => Of(inRange.Range).Where(range => !IsAlike(range.Range, inRange.Range))
            .Select(range => new RuleMutant(range.What, new InRange(range.Range))),
        Compare compare => Comparisons(compare).Select(mutant => new RuleMutant(mutant.What, mutant.Compare)),
        InARow row =>
        [
            .. Steps(row.Days).Select(days => new RuleMutant($"{days} in a row", row with { Days = days })),
            .. Comparisons(row.Each).Select(each => new RuleMutant(each.What, row with { Each = each.Compare })),
        ],
        Latched latched =>
        [
            .. Comparisons(latched.Starts)
                .Select(m => new RuleMutant($"starts {m.What}", latched with { Starts = m.Compare })),
            .. Comparisons(latched.Ends)
                .Select(m => new RuleMutant($"ends {m.What}", latched with { Ends = m.Compare })),
        ],
        TotalOver total =>
        [
            .. Steps(total.Days).Select(days => new RuleMutant($"total over {days}", total with { Days = days })),
            .. Limits(total.Relation, total.Threshold)
                .Select(m => new RuleMutant(m.What, total with { Relation = m.Relation, Threshold = m.Threshold })),
        ],
        HeatSince heat =>
        [
            .. Dates(heat.Since)
                .Select(m => new RuleMutant($"since {m.What}", heat with { Since = (FixedDate)m.Date })),
            .. Moved(heat.Heat.Base)
                .Select(m => new RuleMutant($"base {m.Value}", heat with { Heat = heat.Heat with { Base = m } })),
            .. heat.Heat.Upper is not { } upper ? [] : Moved(upper)
                .Select(m => new RuleMutant($"upper {m.Value}", heat with { Heat = heat.Heat with { Upper = m } })),
            .. Limits(heat.Relation, heat.Threshold)
                .Select(m => new RuleMutant(m.What, heat with { Relation = m.Relation, Threshold = m.Threshold })),
        ],
        Onset onset =>
        [
            .. Of(onset.First).Select(first => new RuleMutant(first.What, onset with { First = first.Condition })),
            .. Of(onset.Within)
                .Select(within => new RuleMutant($"within {within.What}", onset with { Within = within.Range })),
        ],
        _ => throw new ArgumentException($"{condition.GetType().Name} has no mutants."),
    };

    private static IEnumerable<RuleMutant> Of(
        ImmutableArray<Condition> parts, Func<ImmutableArray<Condition>, Condition> whole) =>
        parts.SelectMany((part, index) => Of(part)
            .Select(mutant => new RuleMutant($"[{index}] {mutant.What}", whole(parts.SetItem(index, mutant.Condition))))
            .Append(new RuleMutant($"[{index}] left out", whole(parts.RemoveAt(index)))));

    private static IEnumerable<(string What, CalendarRange Range)> Of(CalendarRange range) =>
    [
        .. Dates(range.From).Select(m => ($"from {m.What}", range with { From = m.Date })),
        .. Dates(range.To).Select(m => ($"to {m.What}", range with { To = m.Date })),
    ];

    private static IEnumerable<(string What, YearlyDate Date)> Dates(YearlyDate date)
    {
        yield return ("a day earlier", date.Plus(-1));
        yield return ("a day later", date.Plus(1));
        switch (date)
        {
            case NthWeekday nth:
                foreach (var n in new[] { nth.Nth - 1, nth.Nth + 1 }.Where(n => n is not 0 and >= -5 and <= 5))
                    yield return ($"nth {n}", nth with { Nth = n });
                foreach (var month in new[] { nth.Month - 1, nth.Month + 1 }.Where(month => month is >= 1 and <= 12))
                    yield return ($"month {month}", nth with { Month = month });
                yield return ("next weekday", nth with { Weekday = Next(nth.Weekday) });
                break;
            case NearestWeekday nearest:
                foreach (var day in new[] { nearest.Day - 1, nearest.Day + 1 })
                    yield return ($"nearest {day}", nearest with { Day = day });
                yield return ("next weekday", nearest with { Weekday = Next(nearest.Weekday) });
                break;
            case WeekdayOnOrAfter first:
                foreach (var day in new[] { first.Day - 1, first.Day + 1 })
                    yield return ($"on or after {day}", first with { Day = day });
                yield return ("next weekday", first with { Weekday = Next(first.Weekday) });
                break;
            case EventDate e:
                foreach (var days in new[] { -1, 1 })
                {
                    yield return ($"not before {days}", e with { NotBefore = (FixedDate)e.NotBefore.Plus(days) });
                    yield return ($"not after {days}", e with { NotAfter = (FixedDate)e.NotAfter.Plus(days) });
                }
                break;
        }
    }

    private static IsoDayOfWeek Next(IsoDayOfWeek weekday) =>
        weekday == IsoDayOfWeek.Sunday ? IsoDayOfWeek.Monday : weekday + 1;

    private static IEnumerable<(string What, Compare Compare)> Comparisons(Compare compare) =>
        Limits(compare.Relation, compare.Threshold).Select(m =>
            ($"{compare.Signal} {m.What}", compare with { Relation = m.Relation, Threshold = m.Threshold }));

    private static IEnumerable<(string What, Relation Relation, Threshold Threshold)> Limits(
        Relation relation, Threshold threshold) =>
    [
        (Neighbour(relation).ToString(), Neighbour(relation), threshold),
        .. Moved(threshold).Select(moved => ($"{moved.Value} {moved.Unit.Symbol()}", relation, moved)),
    ];

    private static IEnumerable<Threshold> Moved(Threshold threshold) =>
        new[] { -1, 1 }.Select(sign => threshold with { Value = threshold.Value + sign * Step(threshold.Unit) })
            .Where(moved => moved.Value >= 0 || moved.Unit is RuleUnit.DegF or RuleUnit.DegC);

    private static IEnumerable<int> Steps(int days) => new[] { days - 1, days + 1 }.Where(moved => moved >= 1);

    private static Relation Neighbour(Relation relation) => relation switch
    {
        Relation.Below => Relation.AtMost,
        Relation.AtMost => Relation.Below,
        Relation.AtLeast => Relation.Above,
        Relation.Above => Relation.AtLeast,
    };

    /// <summary>As finely as the thing is read or told.</summary>
    private static double Step(RuleUnit unit) => unit switch
    {
        RuleUnit.WaterInches or RuleUnit.Inches => 0.1,
        RuleUnit.DegreeDaysF or RuleUnit.DegreeDaysC => 5,
        _ => 1,
    };

    /// <summary>Two ranges that have the same days in every year, such as two ways to say the whole year.</summary>
    private static bool IsAlike(CalendarRange left, CalendarRange right) =>
        CalendarDays.Days(left, Calendar) == CalendarDays.Days(right, Calendar);
}
