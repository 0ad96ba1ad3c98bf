using Shouldly;
using WorkWindows.Planning.Cases;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Crews;

public sealed class PlanCaseTests
{
    public static TheoryData<string, string> Wrong() => new()
    {
        { "hours", "Task a takes 0 hours: give a number above 0." },
        { "place", "Task a is at nowhere, a place that travel times do not know." },
        { "circle", "Task a comes after itself." }, { "after", "Task a comes after z, which is no task of the case." },
        { "chances", "Task a has chances of 1 days: give one for each of 2." },
        { "twice", "The task a occurs twice." }, { "crew", "Crew north works 25 hours a day" },
        { "pace", "Crew north has a pace of 0 at felling: give a number above 0." },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void Of_NamesWhatIsWrong(string what, string says)
    {
        var (task, other, crew) = (Task("a", 4, "ww"), Task("b", 4, "ww"), Crew("north"));
        PlanTask[] tasks = what switch
        {
            "hours" => [task with { Hours = 0 }],
            "place" => [task with { Place = "nowhere" }],
            "circle" => [task with { After = ["b"] }, other with { After = ["a"] }],
            "after" => [task with { After = ["z"] }],
            "chances" => [other, task with { Chances = [1] }],
            "twice" => [task, task],
            _ => [task],
        };

        Should.Throw<PlanCaseException>(() => Of(tasks, what switch
        {
            "crew" => crew with { HoursPerDay = 25 },
            "pace" => crew with { Paces = crew.Paces.Add("felling", 0) },
            _ => crew,
        }))
            .Message.ShouldContain(says);
    }
}
