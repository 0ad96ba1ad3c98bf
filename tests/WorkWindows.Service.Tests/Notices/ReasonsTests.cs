using System.Globalization;
using Shouldly;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Windows;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Notices;

public sealed class ReasonsTests
{
    [Theory]
    [InlineData("20 20 20", "Thu 1 – Sat 3 Jan: limited. Take care. (minimum temperature 20 °F (observed); limit: below 28 °F)")]
    [InlineData("20 21 21", "Thu 1 Jan: limited. Take care. (minimum temperature 20 °F (observed); limit: below 28 °F)|"
        + "Fri 2 – Sat 3 Jan: limited. Take care. (minimum temperature 21 °F (observed); limit: below 28 °F)")]
    [InlineData("40 40 20", "Thu 1 – Fri 2 Jan: open|"
        + "Sat 3 Jan: limited. Take care. (minimum temperature 20 °F (observed); limit: below 28 °F)")]
    public void Days_OfWhichTheSameIsSaid_StandTogether(string minF, string lines)
    {
        var lows = minF.Split(' ').Select(low => double.Parse(low, CultureInfo.InvariantCulture)).ToArray();
        var evaluation = GivenTask.Of(lows, GivenTask.Limits("signal: min-temperature, below: 28 degF")).Evaluation;

        Reasons.Days(
            evaluation, new(GivenTask.First, GivenTask.First.PlusDays(2)), TemperatureScale.Fahrenheit)
            .Select(item => item.Text).ShouldBe(lines.Split('|'));
    }

    [Fact]
    public void Day_NamesTheException_BesideTheMeasuresOfOtherRules()
    {
        var task = GivenTask.Of(
            [10], GivenTask.Closes("signal: min-temperature, below: 20 degF"),
            GivenTask.Limits("signal: min-temperature, below: 28 degF"));
        var facts = task.Evaluation.Facts with
        {
            Overrides = [new("r0", GivenTask.First, GivenTask.First, "Ada Birch", "The stand was looked at")],
        };
        var evaluation = new Engine.Evaluation.PointRules(task.Evaluation.Packs, task.Evaluation.Signals).Evaluate(facts);

        Reasons.Day(evaluation, GivenTask.First, TemperatureScale.Fahrenheit).ShouldBe(
            "limited. Exception to 'Rule 0' by Ada Birch until 1 Jan 2026: The stand was looked at. "
            + "Take care. (minimum temperature 10 °F (observed); limit: below 28 °F)");
        DayStatement.Of(Engine.Evaluation.Explanation.Of(evaluation, GivenTask.First), GivenTask.First).Reasons.ShouldBe(
            ["Exception to 'Rule 0' by Ada Birch until 1 Jan 2026: The stand was looked at", "Take care."]);
    }
}
