using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class GoodToCutTests
{
    [Theory]
    [InlineData("oooooooo", "0-7")]
    [InlineData("ooooooooo", "0-7")]      // the ninth day is next week's business
    [InlineData("cccccccco", "")]
    [InlineData("ccccccco", "7-7")]       // the eighth is not
    [InlineData("oocooccl", "0-1 3-4 7-7")]
    [InlineData("llllcccc", "0-3")]       // limited is workable
    [InlineData("uuuouuuu", "3-3")]       // unknown is not
    [InlineData("uuuuuuuu", "")]
    [InlineData("cccccccc", "")]
    public void Plan_TellsTheOwnerOfTheWorkableRunsOfTheWeek(string days, string announced)
    {
        var plan = NightPlan.Of(Of(Work(days)));

        Runs(plan.Announced.Where(window => window.PersonId == Owner.Id)).ShouldBe(announced);
        plan.Messages.Count(message => message.To == Owner).ShouldBe(announced == "" ? 0 : 1);
    }

    [Theory]
    [InlineData("oooocccc", 0, 3, "", null)]    // told already
    [InlineData("oooooocc", 0, 3, "", 5)]       // grown
    [InlineData("cooocccc", -1, 0, "1-3", null)]  // stopped today, and good again from tomorrow: see StopWorkTests
    [InlineData("oooocccc", -3, -1, "", 3)]     // goes on from yesterday
    [InlineData("oooocccc", -3, -2, "0-3", null)] // a day between makes it another run
    [InlineData("coocoooc", 1, 2, "4-6", null)]   // the second run is news
    [InlineData("coooccoc", 2, 3, "6-6", null)]   // begins a day earlier than told: nothing to take back
    public void Plan_TellsOfARunOnce(string days, int first, int last, string announced, int? grownTo)
    {
        var plan = NightPlan.Of(Of(Work(days)) with { Announced = [Told(first, last)] });

        Runs(plan.Announced.Where(window => window.PersonId == Owner.Id)).ShouldBe(announced);
        plan.Extended.Select(grown => Period.DaysBetween(Today, grown.LastDay))
            .ShouldBe(grownTo is { } day ? [day] : []);
        plan.Messages.Count(message => message.Kind == NoticeKinds.GoodToCut).ShouldBe(announced == "" ? 0 : 1);
    }

    [Theory]
    [InlineData(0, "0-7")]
    [InlineData(3, "3-7")]
    [InlineData(8, "")]
    public void Plan_OffersNoDayBeforeTheFirstOneOfATask(int first, string offered)
    {
        var task = Work("oooooooo", task => task with { NotBefore = Today.PlusDays(first) });

        Runs(NightPlan.Of(Of(task)).Announced).ShouldBe(offered);
    }

    [Fact]
    public void Plan_PutsAllTasksOfAnOwnerIntoOneMessage()
    {
        var plan = NightPlan.Of(Of(
            Work("oocccccc"),
            Work("cooccccc", task => task with { Id = Guid.CreateVersion7(), ParcelName = "South Slope" }),
            Work("oooooooo", task => task with { Id = Guid.CreateVersion7(), LandownerId = null })));

        var message = plan.Messages.Single(message => message.Kind == NoticeKinds.GoodToCut);
        message.Key.ShouldBe($"good-to-cut:{Owner.Id}:2026-02-02");
        message.Calendar!.Entries.Length.ShouldBe(2);
        NoticeText.Of(message.Notice).ShouldContain("South Slope");
    }

    [Fact]
    public void Plan_OffersNoDayAfterTheDeadline()
    {
        var until = Work("oooooooo", task => task with { Deadline = Today.PlusDays(2) });
        var over = Work("oooooooo", task => task with { Deadline = Today.PlusDays(-1) });

        Runs(NightPlan.Of(Of(until)).Announced.Where(window => window.PersonId == Owner.Id)).ShouldBe("0-2");
        NightPlan.Of(Of(over)).Messages.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_OffersNothing_WhileATaskThatComesFirstIsNotDone() =>
        NightPlan.Of(Of(Work("oooooooo") with { Waits = true })).Messages.ShouldBeEmpty();

    [Fact]
    public void Plan_KeepsTheNewsForTomorrow_WhenTodaysMessageWasWritten()
    {
        var night =
            Of(Work("cooccccc")) with { Written = new HashSet<string> { $"good-to-cut:{Owner.Id}:2026-02-02" } };

        NightPlan.Of(night).Announced.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_AnnouncesNothing_WhenTheOwnerHasNoAddress()
    {
        var night = Of(Work("oooooooo"));
        var plan = NightPlan.Of(night with
        {
            People = new Dictionary<Guid, Recipient> { [Owner.Id] = Owner with { Address = null } },
        });

        plan.Messages.ShouldBeEmpty();
        plan.Announced.ShouldBeEmpty();
        plan.Unreachable.ShouldBe([Owner.Id]);
    }
}
