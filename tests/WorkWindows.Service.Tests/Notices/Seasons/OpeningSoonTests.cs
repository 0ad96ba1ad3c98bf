using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Seasons;

/// <summary>The shipped rules let hinge cutting begin on 25 January and on 1 August (docs/rules/seasons.md).</summary>
public sealed class OpeningSoonTests
{
    [Theory]
    [InlineData("2026-01-10", false)]
    [InlineData("2026-01-11", true)]   // 14 days before
    [InlineData("2026-01-24", true)]
    [InlineData("2026-01-25", false)]  // it is open
    [InlineData("2026-07-17", false)]
    [InlineData("2026-07-18", true)]
    public void Plan_TellsOwnerAndLead_TwoWeeksBeforeTheSeason(string today, bool isTold)
    {
        var plan = NightPlan.Of(Of(Work("uuuuuuuu", today: Day(today))));

        plan.Messages.Where(message => message.Kind == NoticeKinds.OpeningSoon).Select(message => message.To)
            .ShouldBe(isTold ? [Owner, Lead] : [], ignoreOrder: true);
        plan.Topics.Count.ShouldBe(isTold ? 2 : 0);
    }

    [Fact]
    public void Plan_TellsOnceASeason()
    {
        var first = NightPlan.Of(Of(Work("uuuuuuuu", today: Day("2026-01-11"))));
        var night = Of(Work("uuuuuuuu", today: Day("2026-01-12"))) with { Topics = first.Topics };

        NightPlan.Of(night).Messages.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_TellsNothing_WhenTheDeadlineIsBeforeTheSeason_OrOtherWorkComesFirst()
    {
        var late = Work("uuuuuuuu", task => task with { Deadline = Day("2026-01-20") }, Day("2026-01-11"));
        var waits = Work("uuuuuuuu", task => task with { Id = Guid.CreateVersion7() }, Day("2026-01-11")) with { Waits = true };

        NightPlan.Of(Of(late, waits)).Messages.ShouldBeEmpty();
    }

    private static LocalDate Day(string text) => NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;
}
