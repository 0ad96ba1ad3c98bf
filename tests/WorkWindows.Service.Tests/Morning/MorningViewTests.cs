using NodaTime;
using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Morning;

namespace WorkWindows.Service.Tests.Morning;

public sealed class MorningViewTests
{
    private static readonly LocalDate Today = new(2027, 2, 1);
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 1, 11, 0);

    [Fact]
    public void Of_CountsWhatMayBeDone_AndLeavesOutWhatWaits()
    {
        var view = MorningView.Of([Row("olcuoooooo"), Row("looooooooo"), Row("oooooooooo") with { Waits = true }], Today, Now);

        view.Days.Take(4).Select(day => (day.Open, day.Limited, day.Unknown, day.Closed))
            .ShouldBe([(1, 1, 0, 0), (1, 1, 0, 0), (1, 0, 0, 1), (1, 0, 1, 0)]);
        view.Summary.ShouldBe("2 of 3 tasks may be done today, 1 of them with limits.");
    }

    [Fact]
    public void Of_NamesTheNextDay_WhereNothingMayBeDoneToday() =>
        MorningView.Of([Row("ccoooooooo"), Row("uccccccccc")], Today, Now).Summary
            .ShouldBe("No work may be done today. Next: Wed 3 Feb, 1 task. For 1 something is not known: do not start it.");

    /// <summary>Nobody has looked, or not since the night before last: never open.</summary>
    [Fact]
    public void Of_KnowsNothing_WhereNobodyHasLooked()
    {
        var old = Row("oooooooooo") with { SeenAt = Now - TaskOutlook.LongestAge - Duration.FromMinutes(1) };
        var none = Row("") with { SeenAt = null, FirstDay = null, States = null };

        var view = MorningView.Of([old, none], Today, Now);

        (view.Days[0].Unknown, view.Days[0].Workable, view.Unseen).ShouldBe((2, 0, 2));
        old.On(Today, Now).ShouldBe(DayState.Unknown);
        Row("o").On(Today.PlusDays(1), Now).ShouldBe(DayState.Unknown, "nothing was said of the day after");
    }

    [Theory]
    [InlineData("oooooooooo", "oocccooooo", "2-4 Open>Closed")]
    [InlineData("cccccccccc", "oooccccccc", "0-2 Closed>Open")]
    [InlineData("ouuuuuuuuu", "oooouuuuuu", "1-3 Unknown>Open")]
    [InlineData("oouuuuuuuu", "ooooouuuuu", "")]  // further ahead every day becomes known one morning
    [InlineData("oooooooooo", "ooouuuuuuu", "3-9 Open>Unknown")]
    [InlineData("oooooooooo", "llllllllll", "")]
    public void Of_TellsWhatChangedOvernight(string before, string now, string change)
    {
        var row = Row(now) with { BeforeFirstDay = Today, BeforeStates = before };

        string.Join(' ', MorningView.Of([row], Today, Now).Changed.Select(one =>
            $"{Period.DaysBetween(Today, one.First)}-{Period.DaysBetween(Today, one.Last)} {one.Was}>{one.Is}")).ShouldBe(change);
    }

    [Fact]
    public void Of_TellsTheSameChangeOfAPropertyOnce_AndLossesFirst()
    {
        var property = Guid.NewGuid();
        OutlookRow Lost() => Row("cccccccccc") with { PropertyId = property, BeforeFirstDay = Today, BeforeStates = "oooooooooo" };
        var won = Row("oooooooooo") with { BeforeFirstDay = Today.PlusDays(-1), BeforeStates = "cccccccccc" };

        var changed = MorningView.Of([won, Lost(), Lost()], Today, Now).Changed;

        changed.Select(one => (one.Is, one.Tasks.Count)).ShouldBe([(DayState.Closed, 2), (DayState.Open, 1)]);
    }

    [Fact]
    public void Of_NamesWhatEndsSoon_ByItsLastDay()
    {
        var deadline = Row("oooooooooo") with { Deadline = Today.PlusDays(4), LastDay = Today.PlusDays(60) };
        var season = Row("oooooooooo") with { LastDay = Today.PlusDays(2), ClosedBy = "Oak wilt" };
        var later = Row("oooooooooo") with { LastDay = Today.PlusDays(MorningView.DaysClosing + 1) };
        var closed = Row("cooooooooo") with { LastDay = Today.PlusDays(2) };

        MorningView.Of([deadline, season, later, closed], Today, Now).Closing.ShouldBe([season, deadline]);
    }

    [Theory]
    [InlineData("workable", null, "b a")]
    [InlineData("limited", null, "a")]
    [InlineData("closed", null, "c")]
    [InlineData(null, null, "b c a")]
    [InlineData(null, 3, "b c")]
    [InlineData("workable", 0, "b")]
    public void Filter_LeavesOutAndOrders(string? state, int? closesInDays, string expected)
    {
        OutlookRow[] rows =
        [
            Row("lccccccccc") with { Parcel = "a", LastDay = Today.PlusDays(9) }, Row("occccccccc") with { Parcel = "b", LastDay = Today },
            Row("cccccccccc") with { Parcel = "c", LastDay = Today.PlusDays(3) },
        ];

        var closesBy = closesInDays is { } days ? $"{Today.PlusDays(days):uuuu-MM-dd}" : null;

        string.Join(' ', new TaskFilter(null, null, null, null, state, closesBy, "closing").Of(rows, Today, Now).Select(row => row.Parcel))
            .ShouldBe(expected);
    }

    private static OutlookRow Row(string states) => new()
    {
        Id = Guid.NewGuid(),
        PracticeId = "hinge-cut",
        ParcelId = Guid.NewGuid(),
        Parcel = "Slope",
        PropertyId = Guid.NewGuid(),
        Property = "Fern Hollow",
        CountyFips = "26065",
        State = "MI",
        Owner = null,
        CrewSize = 2,
        NotBefore = null,
        Deadline = null,
        ScheduledOn = null,
        Waits = false,
        SeenAt = Now - Duration.FromHours(3),
        FirstDay = Today,
        States = states,
        BeforeFirstDay = null,
        BeforeStates = null,
        LastDay = null,
        ClosedBy = null,
    };
}
