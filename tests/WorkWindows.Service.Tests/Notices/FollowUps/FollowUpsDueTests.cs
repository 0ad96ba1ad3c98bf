using NodaTime;
using Shouldly;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.FollowUps;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.FollowUps;

/// <summary>Tie-down one to two years after a hinge cut, a re-cut three to four: common practice, no source.</summary>
public sealed class FollowUpsDueTests
{
    private static readonly Recipient Consultant =
        new(new("00000000-0000-7000-8000-00000000000c"), "Ada Birch", "ada@example.org") { IsConsultant = true };

    [Theory]
    [InlineData("tie-down", "2025-03-05", null)]
    [InlineData("tie-down", "2025-03-04", "begins")]  // due from 4 March 2026, 30 days before is today
    [InlineData("tie-down", "2024-03-05", "begins")]
    [InlineData("tie-down", "2024-03-04", "ends")]
    [InlineData("tie-down", "2020-01-01", "ends")]
    [InlineData("re-cut", "2023-03-05", null)]
    [InlineData("re-cut", "2023-03-04", "begins")]
    [InlineData("re-cut", "2022-03-04", "ends")]
    public void Plan_TellsConsultants_WhenTheTimeBeginsAndWhenItRunsOut(string practice, string completed, string? stage)
    {
        var plan = NightPlan.Of(Given(Due(practice, completed)));

        plan.Topics.Select(topic => topic.Topic).ShouldBe(
            stage is null ? [] : [$"follow-up:{TaskId}:{practice}:{stage}"]);
        plan.Messages.Select(message => message.To).ShouldBe(stage is null ? [] : [Consultant]);
    }

    [Fact]
    public void Plan_TellsEachStageOnce()
    {
        var first = NightPlan.Of(Given(Due("tie-down", "2025-02-01")));

        NightPlan.Of(Given(Due("tie-down", "2025-02-01")) with { Topics = first.Topics }).Messages.ShouldBeEmpty();
    }

    internal static Night Given(params DueFollowUp[] due) => Of() with
    {
        FollowUps = due,
        People = new Dictionary<Guid, Recipient> { [Owner.Id] = Owner, [Consultant.Id] = Consultant },
    };

    internal static DueFollowUp Due(string practice, string completed, string? planned = null) => new(
        TaskId, FollowUp.All.Single(one => one.After.Id == "hinge-cut" && one.Practice.Id == practice),
        NodaTime.Text.LocalDatePattern.Iso.Parse(completed).Value, "Cedar Hollow", "North Forty", planned);
}
