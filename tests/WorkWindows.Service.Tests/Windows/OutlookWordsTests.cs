using Shouldly;
using WorkWindows.Service.Windows;
using static WorkWindows.Service.Tests.Windows.GivenTask;

namespace WorkWindows.Service.Tests.Windows;

public sealed class OutlookWordsTests
{
    private const double Gap = double.NaN;

    [Theory]
    [InlineData(0, "Open until Fri 2 Jan, then closed: Rule 0")]
    [InlineData(2, "Closed: Rule 0. Opens Sun 4 Jan")]
    [InlineData(3, "Open until Sun 4 Jan, then not known yet: minimum temperature")]
    [InlineData(4, "Not known today: minimum temperature")]
    [InlineData(5, "Closed: Rule 0. Opens Wed 7 Jan")]
    [InlineData(6, "Open past Wed 7 Jan")]
    public void Of_SaysWhatComesNext(int day, string words)
    {
        var task = GivenTask.Of([30, 30, 10, 30, Gap, 10, 30], Closes("signal: min-temperature, below: 20 degF"));

        OutlookWords.Of(task.Evaluation, First.PlusDays(day)).ShouldBe(words);
    }

    [Theory]
    [InlineData(new double[] { 25, 25, 10 }, 0, "Workable, limited, until Fri 2 Jan, then closed: Rule 0")]
    [InlineData(new double[] { 30, 25, 10 }, 0, "Open or limited until Fri 2 Jan, then closed: Rule 0")]
    [InlineData(new double[] { 30, 25, 10 }, 1, "Workable, limited, until Fri 2 Jan, then closed: Rule 0")]
    [InlineData(new double[] { 25, 30, 10 }, 1, "Open until Fri 2 Jan, then closed: Rule 0")]
    [InlineData(new double[] { 25, 25 }, 0, "Workable, limited, past Fri 2 Jan")]
    [InlineData(new double[] { 25, 30 }, 0, "Open or limited past Fri 2 Jan")]
    public void Of_SaysOpenOnlyOfDaysWithoutALimit(double[] minF, int day, string words)
    {
        var task = GivenTask.Of(
            minF, Closes("signal: min-temperature, below: 20 degF"), Limits("signal: min-temperature, below: 28 degF"));

        OutlookWords.Of(task.Evaluation, First.PlusDays(day)).ShouldBe(words);
    }

    [Fact]
    public void Of_NamesTheDayThatMayOpen_WhenItComesBeforeTheNextWindow()
    {
        var task = GivenTask.Of([10, Gap, 30], Closes("signal: min-temperature, below: 20 degF"));

        OutlookWords.Of(task.Evaluation, First).ShouldBe(
            "Closed: Rule 0. May open Fri 2 Jan, not known yet: minimum temperature");
    }

    [Fact]
    public void Of_NamesTwoOfManyThatAreNotKnown()
    {
        var task = GivenTask.Of([10, 30], Closes("signal: min-temperature, below: 20 degF"),
            Closes("signal: wind, above: 9 mph"), Closes("signal: gust, above: 9 mph"),
            Closes("signal: snow-depth, above: 9 in"), Closes("signal: frost-depth, above: 9 in"));

        OutlookWords.Of(task.Evaluation, First.PlusDays(1)).ShouldBe(
            "Not known today: sustained wind, gusts and 2 more");
    }

    [Fact]
    public void Of_NamesTheEndOfWhatIsKnown_WhenNothingOpens()
    {
        var task = GivenTask.Of([10, 10], Closes("signal: min-temperature, below: 20 degF"));

        OutlookWords.Of(task.Evaluation, First).ShouldBe("Closed: Rule 0. Does not open before Fri 2 Jan");
    }
}
