using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation.Oracle;

/// <summary>Rules, weather and tasks at random, many of them at the edge of a limit, a range or a gap.</summary>
internal static class RandomRules
{
    private static readonly string[] Ids = ["a", "b", "c", "d", "e"];

    private static readonly Gen<FixedDate> MonthDay = Gen.Int[0, 365]
        .Select(day => new LocalDate(2024, 1, 1).PlusDays(day)).Select(day => new FixedDate(day.Month, day.Day));

    private static readonly Gen<IsoDayOfWeek> Weekday = Gen.Int[1, 7].Select(day => (IsoDayOfWeek)day);

    private static readonly Gen<YearlyDate> ByCalendar = Gen.Select(
        Gen.OneOf(
            MonthDay.Select(day => (YearlyDate)day),
            Gen.Select(Of(-5, -2, -1, 1, 3, 4, 5), Weekday, Gen.Int[1, 12])
                .Select((nth, weekday, month) => (YearlyDate)new NthWeekday(nth, weekday, month)),
            Gen.Select(Weekday, MonthDay).Select(
                (weekday, day) => (YearlyDate)new NearestWeekday(weekday, day.Month, day.Day)),
            Gen.Select(Weekday, MonthDay).Select(
                (weekday, day) => (YearlyDate)new WeekdayOnOrAfter(weekday, day.Month, day.Day))),
        Of(0, 0, 0, 1, -1, 40),
        (date, plus) => date.Plus(plus));

    private static readonly Gen<YearlyDate> LeafOut = Gen.Select(Gen.Int[60, 150], Gen.Int[0, 40], Gen.Int[-9, 9])
        .Select((early, more, plus) => (YearlyDate)new EventDate(
            SeasonEventKind.LeafOut, OnDay(early), OnDay(early + more))
        {
            PlusDays = plus,
        });

    private static readonly Gen<CalendarRange> Range = Gen.Select(
        Gen.Frequency((4, ByCalendar), (1, LeafOut)), Gen.Frequency((4, ByCalendar), (1, LeafOut)),
        (from, to) => new CalendarRange(from, to));

    private static readonly Gen<CalendarRange> FixedRange =
        Gen.Select(ByCalendar, ByCalendar, (from, to) => new CalendarRange(from, to));

    private static readonly Gen<Relation> AnyRelation = Gen.Enum<Relation>();

    private static readonly Gen<Compare> Limit = Gen.OneOf(
        Temperature(SignalKind.MinTemperatureC), Temperature(SignalKind.MaxTemperatureC),
        Gen.Select(AnyRelation, Gen.Int[0, 3]).Select((relation, mph) =>
            new Compare(SignalKind.GustMps, relation, new(mph, RuleUnit.Mph))));

    private static readonly Gen<Condition> Leaf = Gen.Frequency(
        (4, Limit.Select(limit => (Condition)limit)),
        (4, Range.Select(range => (Condition)new InRange(range))),
        (2, Gen.Select(Limit, Gen.Int[2, 4]).Select((limit, days) => (Condition)new InARow(limit, days))),
        (1, Of<Condition>(new InForce(SignalKind.RedFlagAlert))),
        (2, Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Bool).Select(
            (start, less, above) => Latch(start, less, above))),
        (2, Gen.Select(Gen.Int[2, 4], AnyRelation, Gen.Int[0, 4]).Select((days, relation, mm) =>
            (Condition)new TotalOver(SignalKind.PrecipitationMm, days, relation, new(mm, RuleUnit.WaterMillimeters)))),
        (1, Gen.Select(Gen.Enum<DegreeDayMethod>(), MonthDay, AnyRelation, Gen.Int[0, 60]).Select(
            (method, since, relation, need) => (Condition)new HeatSince(
                new(method, new(30, RuleUnit.DegF), new(34, RuleUnit.DegF)), since, relation,
                new(need, RuleUnit.DegreeDaysF)))));

    private static readonly Gen<Condition> AnyCondition = Nested(Nested(Leaf));

    private static readonly Gen<Rule> AnyRule = Gen.Select(
        Of(Ids), Gen.Enum<Effect>(), AnyCondition, AnyScope(), Gen.Enum<Authority>(), Gen.Bool,
        Of(Ids)).Select((id, effect, when, scope, authority, lifeSafety, other) => new Rule(
            id, id, effect, scope, when, "", null, authority, new("", null, null, null), new(null, null), lifeSafety,
            effect == Effect.Lifts && other != id ? other : null));

    /// <summary>One to five rules with different ids, in one pack.</summary>
    public static Gen<RulePack> Pack { get; } = AnyRule.Array[1, 5].Select(rules => new RulePack(
        "p", "1", "", PackLevel.National, "", [.. rules.DistinctBy(rule => rule.Id)]));

    public static Gen<TaskFacts> Facts { get; } = Gen.Select(
        Of("hinge-cut", "cleanup"), Of("MI", "WI"),
        Of<SpeciesGroup[]?>(null, [SpeciesGroup.RedOak], [SpeciesGroup.Ash]), Gen.Bool,
        Gen.Select(Of(Ids), Gen.Int[0, 50], Gen.Int[0, 9]).Array[0, 2]).Select(
            (practice, state, species, wet, overrides) => new TaskFacts(
                "T", PracticeCatalogue.Find(practice)!, state, "26065", species is null ? null : [.. species],
                wet ? [SiteFlag.WetGround] : [])
            {
                Organization = state == "MI" ? "ours" : null,
                Overrides =
                [
                    .. overrides.Select(o => new RuleOverride(
                        o.Item1, Weather.First.PlusDays(o.Item2), Weather.First.PlusDays(o.Item2 + o.Item3), "", "")),
                ],
            });

    private static Gen<Compare> Temperature(SignalKind kind) => Gen.Select(AnyRelation, Gen.Int[29, 33])
        .Select((relation, degF) => new Compare(kind, relation, new(degF, RuleUnit.DegF)));

    private static Latched Latch(int start, int less, bool above)
    {
        var (starts, ends) = above ? (Relation.AtLeast, Relation.Below) : (Relation.Below, Relation.AtLeast);
        return new(
            new(SignalKind.GustMps, starts, new(start, RuleUnit.Mph)),
            new(SignalKind.GustMps, ends, new(above ? Math.Max(0, start - less) : start + less, RuleUnit.Mph)));
    }

    private static Gen<Condition> Nested(Gen<Condition> inner) => Gen.Frequency(
        (3, inner),
        (1, inner.Array[1, 3].Select(parts => (Condition)new AllOf([.. parts]))),
        (1, inner.Array[1, 3].Select(parts => (Condition)new AnyOf([.. parts]))),
        (1, inner.Select(part => (Condition)new Not(part))),
        (1, Gen.Select(inner, FixedRange).Select((first, within) => (Condition)new Onset(first, within))));

    private static Gen<Scope> AnyScope() => Gen.Select(
        Of("hinge-cut", ""), Of(PracticeTraits.None, PracticeTraits.ChainSaw, PracticeTraits.FellsTrees),
        Of("MI", ""), Of<SpeciesGroup[]>([], [SpeciesGroup.RedOak]),
        Gen.Bool, Of("ours", "", "")).Select((practice, traits, state, species, wet, organization) => new Scope(
            Named(practice), traits, Named(state), [], [.. species], wet
                ? []
                : [SiteFlag.WetGround], Named(organization), null));

    private static Gen<T> Of<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static ImmutableSortedSet<string> Named(string name) => name.Length == 0 ? [] : [name];

    private static FixedDate OnDay(int dayOfYear)
    {
        var day = new LocalDate(2023, 1, 1).PlusDays(dayOfYear - 1);
        return new(day.Month, day.Day);
    }

    /// <summary>Some fifty days of weather around a New Year or a leaf-out, with gaps.</summary>
    internal static class Weather
    {
        public const int Days = 50;

        public static readonly LocalDate First = new(2024, 2, 10);

        public static Gen<SignalSet> Signals { get; } = Gen.Select(
            DegF(28, 34), DegF(28, 34), Whole(0, 4).Select(mph => mph.Select(v => v * 0.44704).ToArray()), Whole(0, 3),
            Whole(0, 1), Gen.Int[0, 400], Gen.Int[-1, 60]).Select((min, max, gust, rain, alert, later, leafOut) =>
            {
                var span = new DaySpan(First.PlusDays(later), Days);
                return SignalSet.Of("random", span,
                    [
                        Given.Signal(SignalKind.MinTemperatureC, span, min),
                        Given.Signal(SignalKind.MaxTemperatureC, span, max),
                        Given.Signal(SignalKind.GustMps, span, gust),
                        Given.Signal(SignalKind.PrecipitationMm, span, rain),
                        Given.Signal(SignalKind.RedFlagAlert, span, alert),
                    ],
                    leafOut < 0
                        ? []
                        : [new(SeasonEventKind.LeafOut, new LocalDate(2024, 3, 20).PlusDays(leafOut), Basis.Observed)]);
            });

        private static Gen<double[]> DegF(int low, int high) =>
            Whole(low, high).Select(values => values.Select(degF => (degF - 32) / 1.8).ToArray());

        private static Gen<double[]> Whole(int low, int high) =>
            Gen.Frequency((9, Gen.Int[low, high].Select(value => (double)value)), (1, Gen.Const(double.NaN))).Array[Days];
    }
}
