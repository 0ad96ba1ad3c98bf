using NodaTime;
using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;
using static WorkWindows.Service.Tests.Windows.GivenTask;

namespace WorkWindows.Service.Tests.Windows;

public sealed class DayReasonsTests
{
    private const double Gap = double.NaN;

    [Theory]
    [InlineData(14, "14 °F", "past the limit by 6 °F; 2 days in a row so far", "observed")]
    [InlineData(23.5, "23.5 °F", "short of the limit by 3.5 °F; 0 days in a row so far", "observed")]
    [InlineData(Gap, "not known", "not known; 0 days in a row so far", "no value")]
    public void Fact_TellsValueLimitMarginAndBasis(double minF, string value, string margin, string basis)
    {
        var reason = ReasonOn(1, [10, minF], Closes("signal: min-temperature, below: 20 degF, days-in-a-row: 3"));

        reason.Facts.ShouldBe([new("minimum temperature", value, "below 20 °F for 3 days in a row", margin, basis)]);
    }

    [Theory]
    [InlineData("01-01", "01-04", "1 Jan 2026 to 4 Jan 2026", "2 days left")]
    [InlineData("01-03", "01-04", "3 Jan 2026 to 4 Jan 2026", "begins in 1 day")]
    public void Fact_TellsTheDaysLeftOfARange(string from, string to, string range, string margin)
    {
        var reason = ReasonOn(1, [30, 30], Closes($"calendar: {{ from: {from}, to: {to} }}"));

        reason.Facts.ShouldBe([new("date", "2 Jan 2026", range, margin, "calendar")]);
    }

    [Fact]
    public void Cells_MarkTheOneDayThatThePageIsAbout()
    {
        var task = GivenTask.Of([30, 30, 30], Closes("signal: min-temperature, below: 20 degF"));

        var onADay = DayCell.Of(task, new(First, 3), today: First, viewed: First.PlusDays(1));
        var onAll = DayCell.Of(task, new(First, 3), today: First, viewed: null);

        onADay.Select(cell => cell.CurrentDate).ShouldBe([null, "date", null]);
        onADay.Select(cell => cell.Style).ShouldBe(["state open", "state open is-viewed", "state open"]);
        onAll.Select(cell => cell.CurrentDate).ShouldBe(["date", null, null]);
        onAll.ShouldAllBe(cell => cell.Style == "state open");
    }

    [Fact]
    public void Reason_HasNoFact_WhenTheRuleHoldsAllYear() =>
        ReasonOn(0, [30], Requires("calendar: { from: 01-01, to: 12-31 }")).Facts.ShouldBeEmpty();

    [Fact]
    public void Reason_NamesAuthoritySourceAndAddress()
    {
        var reason = ReasonOn(0, [10], Closes("signal: min-temperature, below: 20 degF"));

        (reason.Authority, reason.Source, reason.Address)
            .ShouldBe(("agency guideline", "Handbook, 2020", "https://example.org/0"));
    }

    [Theory]
    [InlineData(30, "Open today", "No rule stands against the work.")]
    [InlineData(25, "Limited today: only with these measures", "Take care.")]
    [InlineData(10, "Closed today", "It is so.")]
    [InlineData(Gap, "Not known today: do not start",
        "Not known: minimum temperature. Without it a rule that may close the day cannot be checked.")]
    public void Statement_SaysTheStateAndWhy(double minF, string headline, string reason)
    {
        var task = GivenTask.Of(
            [minF],
            Closes("signal: min-temperature, below: 20 degF"),
            Limits("signal: min-temperature, below: 28 degF"));

        var statement = DayStatement.Of(Explanation.Of(task.Evaluation, First), First);

        (statement.Headline, string.Join(" ", statement.Reasons)).ShouldBe((headline, reason));
    }

    private static RuleReason ReasonOn(int day, double[] minF, string rule)
    {
        var date = First.PlusDays(day);
        return RuleReason.Of(Explanation.Of(GivenTask.Of(minF, rule).Evaluation, date).Verdicts.Single(), date);
    }
}
