using NodaTime;
using Shouldly;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Service.Tests.Windows;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Seasons;

/// <summary>Leaf-out of these nights is on 28 April, and hinge cutting ends the day before.</summary>
public sealed class ClosingEarlyTests
{
    private static readonly LocalDate Ends = new(2026, 4, 27);

    [Theory]
    [InlineData(2, false)]   // a prediction wanders
    [InlineData(3, true)]
    [InlineData(20, true)]
    [InlineData(-5, false)]  // later than told
    public void Plan_TellsWhoWasToldALaterEnd(int daysLater, bool isTold)
    {
        var plan = NightPlan.Of(Of(Work("cccccccc")) with { SeasonEnds = [Told(Ends.PlusDays(daysLater))] });

        var messages = plan.Messages.Where(message => message.Kind == NoticeKinds.ClosingEarly).ToList();
        messages.Count.ShouldBe(isTold ? 1 : 0);
        if (isTold)
        {
            plan.SeasonEnds[(TaskId, Owner.Id)].ShouldBe(Ends);
            messages[0].Notice.Subject.ShouldBe("Season ends early: Cedar Hollow, last day Mon 27 Apr");
        }
    }

    [Fact]
    public void Plan_RemembersTheEndThatAnOfferNames_InsteadOfTellingItTwice()
    {
        var plan = NightPlan.Of(Of(Work("cooccccc")) with { SeasonEnds = [Told(Ends.PlusDays(10))] });

        plan.Messages.ShouldNotContain(message => message.Kind == NoticeKinds.ClosingEarly);
        plan.SeasonEnds[(TaskId, Owner.Id)].ShouldBe(Ends);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(3, true)]
    public void Plan_TakesTheDaysBeforeASeasonThatWasToldAhead_ForNoEndOfIt(int daysLater, bool isTold)
    {
        // Hinge cutting opens on 25 January.
        var work = Work("cccccccc", today: new(2026, 1, 21));
        var plan = NightPlan.Of(Of(work) with { SeasonEnds = [Told(Ends.PlusDays(daysLater))] });

        plan.Messages.Where(message => message.Kind == NoticeKinds.ClosingEarly)
            .Select(message => message.Notice.Subject)
            .ShouldBe(isTold ? ["Season ends early: Cedar Hollow, last day Mon 27 Apr"] : []);
    }

    /// <summary>Thirteen days: as long as a break in past years may be (docs/rules/chances.md); common practice, no source.</summary>
    [Theory]
    [InlineData("03-13", "Mon 27 Apr", " With a break in between that the calendar makes: Sun 1 – Fri 13 Mar.")]
    [InlineData("03-14", "Sat 28 Feb", "")]
    public void Plan_TakesABreakOfTwoWeeks_AndNoShorterOne_ForTheEnd(string to, string lastDay, string breaks)
    {
        var (task, evaluation) = GivenTask.Of(
            [.. Enumerable.Repeat(40.0, 240)], GivenTask.Closes($"calendar: {{ from: 03-01, to: {to} }}"),
            GivenTask.Closes("calendar: { from: 04-28, to: 07-31 }"));
        var tonight = new TaskTonight(task with { CrewLeadId = Lead.Id }, evaluation, GivenTask.First.PlusDays(1));
        var told = new SeasonEnd { TaskId = task.Id, PersonId = Lead.Id, LastDay = new(2026, 5, 6), ToldAt = Now };

        var notice = NightPlan.Of(Of(tonight) with { SeasonEnds = [told] }).Messages
            .Single(message => message.Kind == NoticeKinds.ClosingEarly).Notice;

        var text = NoticeText.Of(notice);
        notice.Subject.ShouldEndWith($"last day {lastDay}");
        text.ShouldContain("A break of up to 13 days does not count as an end.");
        text.Contains("With a break", StringComparison.Ordinal).ShouldBe(breaks != "");
        text.ShouldContain($".{breaks}\n");
        Reasons.Season(evaluation, GivenTask.First, TemperatureScale.Fahrenheit).ShouldEndWith($".{breaks}");
    }

    [Fact]
    public void Plan_SaysNothingOfASeasonThatIsOver() => NightPlan.Of(
        Of(Work("cccccccc")) with { SeasonEnds = [Told(Today.PlusDays(-1))] }).Messages.ShouldBeEmpty();

    private static SeasonEnd Told(LocalDate lastDay) =>
        new() { TaskId = TaskId, PersonId = Owner.Id, LastDay = lastDay, ToldAt = Now };
}
