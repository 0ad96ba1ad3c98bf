using Shouldly;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Windows;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Notices;

public sealed class ReasonsTests
{
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
