using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>Whoever is at work today is told when the day closes, though nobody named the day to them.</summary>
public sealed class AtWorkTests
{
    private static readonly Recipient Member = new(
        new("00000000-0000-7000-8000-00000000000d"), "Una Pike", "una@example.org");

    [Theory]
    [InlineData("c", true)]
    [InlineData("u", true)]
    [InlineData("o", false)]
    [InlineData("l", false)]
    public void Plan_StopsWhoeverWasBookedThisMorning(string today, bool stopped)
    {
        var plan = NightPlan.Of(Given(Booked($"{today}ccccccc")));

        Stops(plan).ShouldBe(stopped ? [Lead.Name, Member.Name] : []);
        if (stopped)
            NoticeText.Of(plan.Messages[0].Notice).ShouldContain("You are to be at this work today. The day is not workable: stop");
    }

    [Fact]
    public void Plan_StopsTheLead_WhereTheWorkWasScheduledForTodayByHand() =>
        Stops(NightPlan.Of(Given(Work("cccccccc", task => task with { ScheduledOn = Today })))).ShouldBe([Lead.Name]);

    [Fact]
    public void Plan_StopsWhoeverIsOnTheSite_ThoughTheyWereToldNotToStart()
    {
        var task = Work("cccccccc", task => task with { ScheduledOn = Today }) with { OnSite = [Member.Id] };
        var told = new[] { Lead, Member }.Select(one => Reminders.KeyOf(TaskId, Today, one.Id)).ToHashSet();

        Stops(NightPlan.Of(Given(task) with { Written = told })).ShouldBe([Member.Name]);
    }

    [Fact]
    public void Plan_StopsOnce_AndAgainWhenTheDayWasGoodInBetween()
    {
        var stopped = NightPlan.Of(Given(Booked("cccccccc")));
        var written = stopped.Messages.Select(message => message.Key).ToHashSet();
        NightPlan.Of(Given(Booked("cccccccc")) with { Written = written }).Messages.ShouldBeEmpty();

        var good = NightPlan.Of(Given(Booked("occccccc")) with { Written = written });
        Runs(good.Announced.Where(window => window.PersonId != Owner.Id)).ShouldBe("0-0 0-0");
        var again = NightPlan.Of(Given(Booked("cccccccc")) with { Written = written, Announced = good.Announced });
        Stops(again).ShouldBe([Owner.Name, Lead.Name, Member.Name], ignoreOrder: true);

        NightPlan.Of(Given(Booked("cccccccc")) with
        {
            Written = again.Messages.Select(message => message.Key).ToHashSet(),
            ToldToStop = again.Stopped.Select(window => (window.TaskId, window.PersonId, Today)).ToHashSet(),
        }).Messages.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(1, "Somebody else does the work on that day.")]
    [InlineData(3, "The work is planned for Thu 5 Feb now.")]
    public void Plan_TakesBackADayThatIsNotTheirsAnyMore(int scheduled, string says)
    {
        var (window, task) = Reminded(Member);
        task = task with
        {
            Task = task.Task with { ScheduledOn = Today.PlusDays(scheduled), CrewLeadId = Lead.Id },
            Booked = [(Today.PlusDays(scheduled), Lead.Id)],
        };
        var plan = NightPlan.Of(Given(task) with { Announced = [window] });

        var message = plan.Messages.Single(message => message.To == Member);
        (message.Kind, message.Calendar!.IsCancelled).ShouldBe((NoticeKinds.DoNotStart, true));
        message.Notice.Subject.ShouldBe("Do not go on Tue 3 Feb: Hinge cut, Cedar Hollow, North Forty");
        NoticeText.Of(message.Notice).ShouldContain(says);
        plan.Stopped.ShouldContain(window);
    }

    [Fact]
    public void Plan_DropsAReminderThatStillWaits_WhenItsDayIsNotTheirsAnyMore()
    {
        var (window, task) = Reminded(Member);
        var plan = NightPlan.Of(Given(task with { Booked = [(Today.PlusDays(3), Lead.Id)] }) with
        {
            Announced = [window],
            Waiting = new Dictionary<string, bool> { [window.MessageKey!] = false },
        });

        plan.Dropped.ShouldBe([window.MessageKey!]);
        plan.Messages.ShouldNotContain(message => message.To == Member);
    }

    [Fact]
    public void Plan_LeavesAReminderThatStands()
    {
        var (window, task) = Reminded(Member);
        var plan = NightPlan.Of(Given(task with { Booked = [(Today.PlusDays(1), Member.Id)] }) with
        {
            Announced = [window],
            Written = new HashSet<string> { window.MessageKey! },
        });

        plan.Stopped.ShouldNotContain(window);
        plan.Messages.ShouldNotContain(message => message.To == Member);
    }

    [Fact]
    public void TakenOff_ReadsAsApproved()
    {
        var (window, task) = Reminded(Member);
        var plan = NightPlan.Of(Given(task with { Booked = [(Today.PlusDays(3), Lead.Id)] }) with { Announced = [window] });

        NoticeTextsTests.Approve(plan.Messages.Single(message => message.To == Member).Notice, "taken-off");
    }

    private static (Announcement Window, TaskTonight Task) Reminded(Recipient person) => (
        new()
        {
            TaskId = TaskId,
            PersonId = person.Id,
            FirstDay = Today.PlusDays(1),
            LastDay = Today.PlusDays(1),
            MessageKey = Reminders.KeyOf(TaskId, Today.PlusDays(1), person.Id),
            AnnouncedAt = Now - Duration.FromHours(12),
        },
        Work("oooooooo"));

    private static TaskTonight Booked(string days) =>
        Work(days) with { Booked = [(Today, Lead.Id), (Today, Member.Id)] };

    private static Night Given(TaskTonight task) => Of(task) with
    {
        People = new[] { Owner, Lead, Member }.ToDictionary(person => person.Id),
    };

    private static string[] Stops(NightPlan plan) =>
        [.. plan.Messages.Where(message => message.Kind == NoticeKinds.StopWork).Select(message => message.To.Name)];
}
