using System.Text.Json;
using CsCheck;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Windows;
using static WorkWindows.Service.Tests.Windows.GivenTask;

namespace WorkWindows.Service.Tests.Windows;

public sealed class SeasonViewTests
{
    private const double Gap = double.NaN;

    private static readonly EvaluatedTask Evaluated = GivenTask.Of(
        [30, 10, 10, 25, Gap, 30],
        Limits("signal: min-temperature, below: 28 degF"),
        Requires("calendar: { from: 01-01, to: 12-31 }"),
        Closes("signal: min-temperature, below: 20 degF"),
        Closes("calendar: { from: 08-01, to: 08-31 }"));

    private static readonly SeasonView View = SeasonView.Of(Evaluated, Evaluated.Evaluation.Span, First);

    [Fact]
    public void Bands_DrawTheDayStatesWithoutGaps()
    {
        Drawn(View.Bands.States).ShouldBe(["open 1-1", "closed 2-3", "limited 4-4", "unknown 5-5", "open 6-6"]);
        View.Bands.States.Label.ShouldBe("2 days open, 1 limited, 1 unknown, 2 closed");
    }

    [Fact]
    public void Bands_DrawEachRuleOnTheDaysItHoldsOrMayHold_ClosingOnesFirst()
    {
        View.Bands.Rules.Select(band => band.Title).ShouldBe(["Rule 2", "Rule 0"]);
        Drawn(View.Bands.Rules[0]).ShouldBe(["closes 2-3", "in-doubt 5-5"]);
        View.Bands.Rules[0].Label.ShouldBe(
            "Rule 2: closes Fri 2 Jan 2026 to Sat 3 Jan 2026, not known Mon 5 Jan 2026 to Mon 5 Jan 2026");
        View.Bands.Always.ShouldBe(["Rule 1"]);
        View.Bands.Quiet.ShouldBe(["Rule 3"]);
    }

    [Fact]
    public void Rows_TellWindowsAndUnknownDaysInOrder() =>
        View.Rows.Select(row => $"{row.From.Day}-{row.To.Day} {row.Days}: {row.Note}").ShouldBe(
        [
            "1-1 1 day open: then closed: Rule 2",
            "4-4 1 day limited: then not known yet: minimum temperature",
            "5-5 1 day unknown: not known: minimum temperature",
            "6-6 1 day open: the last of the days shown",
        ]);

    [Fact]
    public void Rows_AreTheDaysThatTheDrawingDoesNotClose() => Gen.Double[10, 40].Array[1, 40].Sample(minima =>
    {
        // Some of the days have no reading.
        var given = GivenTask.Of(
            [.. minima.Select(value => value > 35 ? Gap : value)],
            Limits("signal: min-temperature, below: 28 degF"), Closes("signal: min-temperature, below: 20 degF"));
        var view = SeasonView.Of(given, given.Evaluation.Span, First);
        var drawn = view.Bands.States.Runs.Where(run => run.Fill != "closed")
            .SelectMany(run => Days(run.First, run.Last, run.Fill != "unknown"));
        return drawn.SequenceEqual(view.Rows.SelectMany(row => Days(row.From, row.To, row.IsWorkable)));

        static IEnumerable<(LocalDate, bool)> Days(LocalDate first, LocalDate last, bool isWorkable) =>
            Enumerable.Range(0, DaySpan.Between(first, last).Count).Select(day => (first.PlusDays(day), isWorkable));
    });

    [Fact]
    public void Temperatures_AreFahrenheit_AndAGapStaysAGap()
    {
        using var json = JsonDocument.Parse(View.Temperatures!.Spec.ToJson());

        var minimum = json.RootElement.GetProperty("series")[0];
        (minimum.GetProperty("label").GetString(), minimum.GetProperty("values").ToString())
            .ShouldBe(("minimum", "[30,10,10,25,null,30]"));
        json.RootElement.GetProperty("limits").ToString()
            .ShouldBe("""[{"value":20,"label":"20 \u00B0F"},{"value":28,"label":"28 \u00B0F"}]""");
        View.Temperatures.Months.ShouldBe([new("Jan 2026", 10, null, 6)]);
    }

    [Fact]
    public void Temperatures_AreNull_WhenNoneIsKnown()
    {
        var task = GivenTask.Of([Gap, Gap], Closes("calendar: { on: 01-01 }"));

        TemperatureChart.Of(task.Evaluation, task.Evaluation.Span, First).ShouldBeNull();
    }

    [Fact]
    public void Today_IsNull_WhenTheDaysLieInThePast() =>
        SeasonView.Of(Evaluated, Evaluated.Evaluation.Span, First.PlusYears(1)).Today.ShouldBeNull();

    [Theory]
    [InlineData(null, "2025-12-05", "2027-02-03")]
    [InlineData(2024, "2024-01-01", "2024-12-31")]
    public void DaysOf_IsTheYear_OrTheComingOneWithTwoMonthsBehind(int? year, string first, string last)
    {
        var days = SeasonView.DaysOf(year, new LocalDate(2026, 2, 3));

        $"{days.First:R} {days.Last:R}".ShouldBe($"{first} {last}");
    }

    [Fact]
    public void Scale_PlacesDaysInPerCentOfTheWidth()
    {
        var scale = new StripScale(DaySpan.Between(new(2025, 12, 31), new(2026, 2, 28)));

        scale.X(new(2025, 12, 31)).ShouldBe("0%");
        scale.X(new(2026, 1, 1)).ShouldBe("1.667%");
        scale.Middle(new(2026, 1, 29)).ShouldBe("49.167%");
        scale.Width(new(2026, 2, 1), new(2026, 2, 3)).ShouldBe("5%");
        scale.Months.Select(month => month.Label).ShouldBe(["Jan 2026", "Feb"]);
    }

    private static IEnumerable<string> Drawn(Band band) =>
        band.Runs.Select(run => $"{run.Fill} {run.First.Day}-{run.Last.Day}");
}
