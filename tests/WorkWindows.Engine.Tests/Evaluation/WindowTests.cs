using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

public class WindowTests
{
    private static readonly RulePack Pack = Given.Pack(
        Given.Rule("closes", "signal: min-temperature, below: -10 degC"),
        Given.Rule("limits", "signal: min-temperature, below: -5 degC"));

    [Theory]
    [InlineData("OLCCOO", "1-2 5-6")]
    [InlineData("CCUUCC", "")]
    [InlineData("UOUOU", "2-2 4-4")]
    public void Windows_GivesTheLongestWorkableRuns(string states, string windows) =>
        Assert.Equal(windows, string.Join(' ', Evaluate(states).Windows(Evaluate(states).Span)
            .Select(window => $"{window.First.Day}-{window.Last.Day}")));

    [Fact]
    public void Runs_CoverEveryDayOnce() =>
        Assert.Equal(
            [
                new(DayState.Open, January(1), January(1)), new(DayState.Limited, January(2), January(3)),
                new(DayState.Closed, January(4), January(4)), new(DayState.Unknown, January(5), January(6)),
            ],
            Evaluate("OLLCUU").Runs(new(January(1), 6)));

    [Fact]
    public void Windows_IsCutOffAtTheDaysAskedFor() =>
        Assert.Equal([new(January(2), January(3))], Evaluate("OOOO").Windows(new(January(2), 2)));

    [Theory]
    [InlineData("OOCCUUOO", 1, "1-2", "7-8", 5)]      // an unknown day comes before the next window
    [InlineData("OOCCOOUU", 1, "1-2", "5-6", null)]   // the unknown days come after it
    [InlineData("CCUC", 1, null, null, 3)]            // nothing but a day that may open
    [InlineData("CCCC", 1, null, null, null)]
    [InlineData("UUOO", 2, null, "3-4", null)]
    public void Outlook_TellsTheCurrentAndTheNextWindow(
        string states, int today, string? current, string? next, int? mayOpen)
    {
        var outlook = Outlook.Of(Evaluate(states), January(today));

        Assert.Equal(current, Text(outlook.Current));
        Assert.Equal(next, Text(outlook.Next));
        Assert.Equal(mayOpen, outlook.MayOpen?.Day);
    }

    private static LocalDate January(int day) => new(2026, 1, day);

    private static string? Text(Window? window) => window is null ? null : $"{window.First.Day}-{window.Last.Day}";

    private static TaskEvaluation Evaluate(string states)
    {
        double[] minimaC = [.. states.Select(
            state => state switch { 'O' => 0, 'L' => -7, 'C' => -20, _ => double.NaN })];
        return new PointRules([Pack], Given.Signals((SignalKind.MinTemperatureC, minimaC))).Evaluate(Given.HingeCut);
    }
}
