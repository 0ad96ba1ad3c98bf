using CsCheck;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation.Oracle;

namespace WorkWindows.Engine.Tests.Evaluation;

public class SingleChangesTests
{
    private const double Gap = double.NaN;

    // -7 °C is 19.4 °F, 5 m/s is 11.2 mph.
    [Theory]
    [InlineData(-7, 5, "minimum temperature 19.4 °F, at least 20 °F: open")]
    [InlineData(0, 5, "minimum temperature 32 °F, below 20 °F: closed; gusts 11.2 mph, at least 25 mph: closed")]
    [InlineData(0, Gap, "gusts not known, below 25 mph: open; minimum temperature 32 °F, below 20 °F: closed; "
        + "gusts not known, at least 25 mph: closed")]
    [InlineData(-7, 12, "")]    // two rules close: no single reading opens the day
    public void Of_NamesTheReadingAndTheLimit(double minC, double gustMps, string expected)
    {
        var evaluation = Evaluate(
            Given.Signals((SignalKind.MinTemperatureC, [minC]), (SignalKind.GustMps, [gustMps])),
            "signal: min-temperature, below: 20 degF", "signal: gust, at-least: 25 mph");

        Assert.Equal(expected, Said(evaluation, Given.First));
    }

    [Fact]
    public void Of_BreaksARunOfDaysByTheDaysOwnReading()
    {
        var evaluation = Evaluate(
            Given.Signals((SignalKind.MinTemperatureC, [-9, -9, -9])), "signal: min-temperature, below: 20 degF, days-in-a-row: 3");

        Assert.Equal("minimum temperature 15.8 °F, at least 20 °F: open", Said(evaluation, Given.First.PlusDays(2)));
    }

    [Theory]
    [InlineData("2026-01-01", "leaf-out 1 Jan 2026, after this day: open")]
    [InlineData("2026-01-02", "leaf-out 2 Jan 2026, by this day: closed")]
    public void Of_MovesAnEvent(string leafOut, string expected)
    {
        var signals = Given.Signals((SignalKind.GustMps, [0, 0])).With(
            [new SeasonEvent(SeasonEventKind.LeafOut, LocalDatePattern.Iso.Parse(leafOut).Value, Basis.Observed)]);
        var evaluation = Evaluate(
            signals, "calendar: { from: { event: leaf-out, not-before: 01-01, not-after: 03-01 }, to: 07-31 }");

        Assert.Equal(expected, Said(evaluation, Given.First));
    }

    [Fact]
    public void Of_TogglesAnAlert() => Assert.Equal(
        "wind alert in force, none: open",
        Said(Evaluate(Given.Signals((SignalKind.WindAlert, [1])), "alert: wind"), Given.First));

    [Fact]
    public void Of_NamesTheSpecies_WhenNoInventoryWasTaken()
    {
        var evaluation = new PointRules(
            [Given.Pack(Given.Rule("closes", "calendar: { on: 01-01 }", "species: [red-oak, white-oak]"))],
            Given.Signals((SignalKind.GustMps, [0]))).Evaluate(Given.HingeCut);

        Assert.Equal("the stand's species not known, none of red oak, white oak: open", Said(evaluation, Given.First));
    }

    [Fact]
    public void Of_NamesOnlyChangesThatReallyChangeTheDay() =>
        Gen.Select(
            RandomRules.Pack, RandomRules.Weather.Signals, RandomRules.Facts, Gen.Int[0, RandomRules.Weather.Days - 1])
            .Sample((pack, signals, facts, day) =>
            {
                var evaluation = new PointRules([pack], signals).Evaluate(facts);
                var date = signals.Span[day];
                var changes = SingleChanges.Of(evaluation, date);
                return changes.All(change => change.State != evaluation[date])
                    && changes.Select(change => (change.What, change.State)).Distinct().Count() == changes.Length;
            }, iter: 300);

    // The day's state is worked out apart from the whole evaluation, and says the same.
    [Fact]
    public void Of_LeadsToTheStateThatAnEvaluationOfTheChangedReadingsGives() =>
        Gen.Select(
            RandomRules.Pack, RandomRules.Weather.Signals, RandomRules.Facts, Gen.Int[0, RandomRules.Weather.Days - 1],
            Gen.Int[28, 34])
            .Sample((pack, signals, facts, day, degF) =>
            {
                var evaluation = new PointRules([pack], signals).Evaluate(facts);
                var changed = signals.With(signals[SignalKind.MinTemperatureC]!.With(day, (degF - 32) / 1.8));
                return evaluation.StateAt(day, changed, _ => true)
                    == new PointRules([pack], changed).Evaluate(facts)[signals.Span[day]];
            }, iter: 2_000);

    private static TaskEvaluation Evaluate(SignalSet signals, params string[] closing) =>
        new PointRules([Given.Pack([.. closing.Select(when => Given.Rule("closes", when))])], signals).Evaluate(
            Given.HingeCut);

    private static string Said(TaskEvaluation evaluation, LocalDate day) => string.Join("; ",
        SingleChanges.Of(evaluation, day).Select(change =>
            $"{change.What} {change.Is}, {change.WouldBe}: {Wording.Of(change.State)}"));
}
