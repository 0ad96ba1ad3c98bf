using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

public sealed class WeekSummaryTests
{
    [Theory]
    [InlineData("", "No task to show.")]
    [InlineData("OOO", "The task may be done today.")]
    [InlineData("OCC LCC", "All 2 tasks may be done today.")]
    [InlineData("OCC CCO CCC", "1 of 3 tasks may be done today, 1 more by Sat 3 Jan.")]
    [InlineData("COC CCO", "No task may be done today, 2 by Sat 3 Jan.")]
    [InlineData("CCC", "No task may be done today.")]
    [InlineData("OOO UUU", "1 of 2 tasks may be done today. For 1, something is not known: do not start it.")]
    [InlineData("UCO UUU",
        "No task may be done today, 1 by Sat 3 Jan. For 2, something is not known: do not start them.")]
    public void Of_CountsTasksByTheDayTheyMayBeDone(string states, string summary)
    {
        var tasks = states.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(days => (IReadOnlyList<DayCell>)[.. days.Select(Cell)]);

        WeekSummary.Of([.. tasks]).ShouldBe(summary);
    }

    [Theory]
    [InlineData("", 1, "No task may be done today. 1 waits for other work.")]
    [InlineData("OOO", 2, "1 of 3 tasks may be done today. 2 wait for other work.")]
    public void Of_CountsNoTaskThatWaits(string states, int waiting, string summary)
    {
        var tasks = states.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(days => (IReadOnlyList<DayCell>)[.. days.Select(Cell)]);

        WeekSummary.Of([.. tasks], waiting).ShouldBe(summary);
    }

    private static DayCell Cell(char letter, int day)
    {
        var state = Enum.GetValues<DayState>().Single(state => $"{state}"[0] == letter);
        return new(
            GivenTask.First.PlusDays(day), state, IsScheduled: false, IsToday: day == 0, IsCurrent: day == 0,
            IsViewed: false, "");
    }
}
