using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class StopWorkTests
{
    [Theory]
    [InlineData("oooocccc", 0, 3, false)]
    [InlineData("ooococcc", 0, 4, true)]    // one day in the middle closes
    [InlineData("ooouoccc", 0, 4, true)]    // or is not known any more
    [InlineData("oooloccc", 0, 4, false)]   // limited may still be worked
    [InlineData("cooocccc", -2, 0, true)]   // today closes
    [InlineData("cooocccc", -2, -1, false)] // what is over needs no stopping
    public void Plan_StopsAWindowThatEndsEarly(string days, int first, int last, bool stopped)
    {
        var window = Told(first, last);
        var plan = NightPlan.Of(Of(Work(days)) with { Announced = [window] });

        plan.Stopped.ShouldBe(stopped ? [window] : []);
        plan.Messages.Where(message => message.Kind == NoticeKinds.StopWork)
            .Select(message => (message.To.Name, message.Key)).ShouldBe(stopped
                ? [(Owner.Name, $"stop-work:{window.Id}:{Owner.Id}"), (Lead.Name, $"stop-work:{window.Id}:{Lead.Id}")]
                : []);
    }

    [Fact]
    public void Plan_KeepsTheDaysThatStillStand_WithoutAnnouncingThemAgain()
    {
        var plan = NightPlan.Of(Of(Work("ooococcc")) with { Announced = [Told(0, 4)] });

        Runs(plan.Announced).ShouldBe("0-2 4-4");
        plan.Messages.ShouldAllBe(message => message.Kind == NoticeKinds.StopWork);
        NoticeText.Of(plan.Messages[0].Notice).ShouldContain("Workable as told before: Mon 2 – Wed 4 Feb, Fri 6 Feb");
    }

    [Fact]
    public void Notice_SaysOnceWhyDaysAreClosed_WhereTheReasonIsTheSame()
    {
        var plan = NightPlan.Of(Of(Work("occcuoccc")) with { Announced = [Told(0, 5)] });

        var text = NoticeText.Of(plan.Messages.First(message => message.Kind == NoticeKinds.StopWork).Notice);
        text.ShouldContain("Tue 3 – Thu 5 Feb: closed\n");
        text.ShouldContain("Fri 6 Feb: unknown\n");
        text.Split("gusts 29.1 mph").Length.ShouldBe(2);
    }

    [Fact]
    public void Plan_StopsOnce()
    {
        var first = NightPlan.Of(Of(Work("ooococcc")) with { Announced = [Told(0, 4)] });
        var again = NightPlan.Of(Of(Work("ooococcc")) with
        {
            Announced = first.Announced,
            Written = first.Messages.Select(message => message.Key).ToHashSet(),
        });

        again.Messages.ShouldBeEmpty();
        again.Stopped.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_TellsEachPersonOnce_WhenBothWereToldOfTheDay()
    {
        var (owners, leads) = (Told(0, 2), Told(1, 1, Lead));
        var task = Work("occccccc", task => task with { ScheduledOn = Today.PlusDays(1) });
        var plan = NightPlan.Of(Of(task) with { Announced = [owners, leads] });

        plan.Messages.Select(message => message.Key).ShouldBe(
            [$"stop-work:{owners.Id}:{Owner.Id}", $"stop-work:{leads.Id}:{Lead.Id}"]);
        plan.Messages.ShouldAllBe(message => message.Calendar!.IsCancelled);
    }

    [Fact]
    public void Plan_StopsTheCrewLeadsDay_WhenItWasNeverAnnouncedToAnOwner()
    {
        var task = Work("cccccccc", task => task with { LandownerId = null, ScheduledOn = Today });
        var plan = NightPlan.Of(Of(task) with { Announced = [Told(0, 0, Lead)] });

        plan.Messages.ShouldHaveSingleItem().To.ShouldBe(Lead);
    }

    [Fact]
    public void Plan_ClosesTheWindowSilently_WhenTheWorkIsDone()
    {
        var window = Told(0, 4);
        var plan = NightPlan.Of(Of() with { Announced = [window] });

        plan.Stopped.ShouldBe([window]);
        plan.Messages.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("cccccccc", false, NoticeKinds.Unreachable)]  // days that were told are taken back
    [InlineData("cccccccc", true, null)]                      // the consultant was told
    public void Plan_TellsConsultants_WhenSomebodyWhoMustStopHasNoAddress(string days, bool wasWritten, string? kind)
    {
        var consultant = new Recipient(new("00000000-0000-7000-8000-00000000000c"), "Ada Birch", "ada@example.org")
        {
            IsConsultant = true,
        };
        var window = Told(1, 2);
        var plan = NightPlan.Of(Of(Work(days, task => task with { CrewLeadId = null })) with
        {
            Announced = [window],
            People = new[] { Owner with { Address = null }, consultant }.ToDictionary(person => person.Id),
            Written = wasWritten
                ? new HashSet<string> { $"no-address:stop-work:{window.Id}:{Owner.Id}:{consultant.Id}" }
                : new HashSet<string>(),
        });

        plan.Messages.Select(message => message.Kind).ShouldBe(kind is null ? [] : [kind]);
        if (kind is not null)
            NoticeTextsTests.Approve(plan.Messages[0].Notice, "no-address");
    }
}
