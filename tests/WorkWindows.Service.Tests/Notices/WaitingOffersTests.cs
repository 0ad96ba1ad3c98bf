using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>What has been planned and not yet told, because its reader sleeps or the mail server is down.</summary>
public sealed class WaitingOffersTests
{
    private const string Key = "good-to-cut:offer";

    [Theory]
    [InlineData(false, 0)]  // nobody has taken it up: nobody need be told that it is not true
    [InlineData(true, 2)]   // it may have arrived: owner and lead are told
    public void Plan_TellsToStop_OnlyWhenTheOfferMayHaveLeft(bool mayHaveLeft, int told)
    {
        var plan = NightPlan.Of(Of(Work("cccccccc")) with
        {
            Announced = [Offered(1, 2)],
            Waiting = new Dictionary<string, bool> { [Key] = mayHaveLeft },
        });

        plan.Messages.Count(message => message.Kind == NoticeKinds.StopWork).ShouldBe(told);
        plan.Stopped.Count.ShouldBe(1);
        plan.Dropped.ShouldBe([Key]);
    }

    [Fact]
    public void Plan_TellsAnew_WhatElseADroppedOfferNamed()
    {
        var other = new Guid("00000000-0000-7000-8000-000000000002");
        var offered = Offered(1, 2, other);
        var plan = NightPlan.Of(Of(
            Work("cccccccc"), Work("cooccccc", task => task with { Id = other, ParcelName = "South Slope" })) with
        {
            Announced = [Offered(1, 2), offered],
            Waiting = new Dictionary<string, bool> { [Key] = false },
        });

        var message = plan.Messages.Single(message => message.Kind == NoticeKinds.GoodToCut);
        NoticeText.Of(message.Notice).ShouldContain("South Slope");
        NoticeText.Of(message.Notice).ShouldNotContain("North Forty");
        plan.Stopped.ShouldContain(offered);
    }

    [Fact]
    public void Plan_WritesTheOfferOfTheSameNightAgain_WhenTheFirstWasDropped()
    {
        var key = $"good-to-cut:{Owner.Id}:{Today:R}";
        var plan = NightPlan.Of(Of(Work("ccoccccc")) with
        {
            Announced = [Offered(1, 2, key: key)],
            Waiting = new Dictionary<string, bool> { [key] = false },
            Written = new HashSet<string> { key },
        });

        plan.Messages.Single(message => message.Kind == NoticeKinds.GoodToCut).Key.ShouldBe(key);
        Runs(plan.Announced).ShouldBe("2-2");
    }

    [Fact]
    public void Plan_TellsNotToStart_WhenTheReminderWasDroppedUnread()
    {
        var key = Reminders.KeyOf(TaskId, Today.PlusDays(1), Lead.Id);
        var plan = NightPlan.Of(Of(Work("occccccc", task => task with { ScheduledOn = Today.PlusDays(1) })) with
        {
            Announced = [new()
            {
                TaskId = TaskId,
                PersonId = Lead.Id,
                FirstDay = Today.PlusDays(1),
                LastDay = Today.PlusDays(1),
                MessageKey = key,
                AnnouncedAt = Now,
            }],
            Waiting = new Dictionary<string, bool> { [key] = false },
            Written = new HashSet<string> { key },
        });

        plan.Messages.Where(message => message.To.Id == Lead.Id).Select(message => message.Kind)
            .ShouldBe([NoticeKinds.DoNotStart]);
    }

    private static Announcement Offered(int first, int last, Guid? task = null, string key = Key) => new()
    {
        TaskId = task ?? TaskId,
        PersonId = Owner.Id,
        FirstDay = Today.PlusDays(first),
        LastDay = Today.PlusDays(last),
        MessageKey = key,
        AnnouncedAt = Now,
    };
}
