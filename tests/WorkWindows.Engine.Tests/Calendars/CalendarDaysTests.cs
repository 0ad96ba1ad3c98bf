using CsCheck;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Calendars;

public sealed class CalendarDaysTests
{
    private static readonly EventDate LeafOut = new(SeasonEventKind.LeafOut, new(3, 15), new(6, 15));
    private static readonly CalendarRange Dormant = new(new FixedDate(1, 25), LeafOut with { PlusDays = -1 });

    [Theory]
    // Windows of the reference (wildlife and calendars, section 1): Ohio, New York, Suffolk County, Indiana.
    [InlineData(10, 1, 3, 31, "2024-09-30 2025-04-01", "2024-10-01 2025-01-01 2025-03-31")]
    [InlineData(11, 1, 3, 31, "2024-10-31 2025-04-01", "2024-11-01")]
    [InlineData(12, 1, 2, 28, "2024-02-29 2024-03-01", "2024-02-28")]
    [InlineData(11, 16, 3, 31, "2024-10-15 2024-11-15", "2024-11-16")]
    // 29 February is the 28th of a common year, and the end is included.
    [InlineData(12, 1, 2, 29, "2024-03-01 2025-03-01", "2024-02-29 2025-02-28")]
    public void Days_RunOverNewYear(int fromMonth, int fromDay, int toMonth, int toDay, string outside, string inside)
    {
        var span = DaySpan.Between(new(2024, 1, 1), new(2025, 12, 31));
        var range = new CalendarRange(new FixedDate(fromMonth, fromDay), new FixedDate(toMonth, toDay));
        var days = CalendarDays.Days(range, SignalSet.Of("anywhere", span, [], []));

        Assert.All(Dates(outside), date => Assert.Equal(Truth.Fails, days[span.IndexOf(date)]));
        Assert.All(Dates(inside), date => Assert.Equal(Truth.Holds, days[span.IndexOf(date)]));
        Assert.True(days.Unknown.IsEmpty);
    }

    [Fact]
    public void Days_EndOnTheDayBeforeAKnownEvent()
    {
        var signals = Year2026(new SeasonEvent(SeasonEventKind.LeafOut, new(2026, 5, 4), Basis.Forecast));

        Assert.Equal("2026-01-25/2026-05-03", Runs(CalendarDays.Days(Dormant, signals).Holds));
        Assert.True(CalendarDays.Days(Dormant, signals).Unknown.IsEmpty);
    }

    [Fact]
    public void Days_AreNotTurnedInsideOut_ByAnEventOutsideItsBounds()
    {
        var fullLeaf = new CalendarRange(LeafOut, new FixedDate(7, 31));
        var mistyped = Year2026(new SeasonEvent(SeasonEventKind.LeafOut, new(2026, 10, 6), Basis.SiteObservation));

        var days = CalendarDays.Days(fullLeaf, mistyped);

        Assert.Equal(Truth.Holds, days[mistyped.Span.IndexOf(new(2026, 7, 1))]);
        Assert.Equal(Truth.Fails, days[mistyped.Span.IndexOf(new(2026, 6, 14))]);
    }

    [Fact]
    public void Days_AreUndecidedBetweenTheBounds_WhenTheEventIsUnknown()
    {
        var days = CalendarDays.Days(Dormant, Year2026());

        Assert.Equal("2026-01-25/2026-03-14", Runs(days.Holds));
        Assert.Equal("2026-03-15/2026-06-14", Runs(days.Unknown));
        Assert.Equal("2026-01-01/2026-01-24 2026-06-15/2026-12-31", Runs(days.Fails));
    }

    [Fact]
    public void Days_TakeTheEventOfTheYearInWhichTheRangeEnds()
    {
        var overNewYear = new CalendarRange(new FixedDate(11, 1), LeafOut);
        var span = DaySpan.Between(new(2025, 10, 1), new(2026, 12, 31));
        SeasonEvent[] events = [new(SeasonEventKind.LeafOut, new(2026, 4, 28), Basis.Observed)];
        var days = CalendarDays.Days(overNewYear, SignalSet.Of("anywhere", span, [], events));

        Assert.Equal("2025-11-01/2026-04-28 2026-11-01/2026-12-31", Runs(days.Holds, span));
        Assert.True(days.Unknown.IsEmpty);
    }

    [Fact]
    public void Days_AreNone_WhenAnEarlyEventEndsTheRangeBeforeItsStart()
    {
        var range = new CalendarRange(new FixedDate(5, 1), LeafOut);
        var signals = Year2026(new SeasonEvent(SeasonEventKind.LeafOut, new(2026, 4, 20), Basis.Observed));

        Assert.True(CalendarDays.Days(range, signals).Holds.IsEmpty);
        Assert.True(CalendarDays.Days(range, signals).Unknown.IsEmpty);
    }

    [Fact]
    public void Days_StartAfterLeafOut_WhenARangeBeginsWithTheEvent()
    {
        var growing = new CalendarRange(LeafOut, new FixedDate(10, 31));

        Assert.Equal("2026-06-15/2026-10-31", Runs(CalendarDays.Days(growing, Year2026()).Holds));
        Assert.Equal("2026-03-15/2026-06-14", Runs(CalendarDays.Days(growing, Year2026()).Unknown));
    }

    [Theory]
    [InlineData("2026-02-01", "2026-01-25", "2026-05-03", Basis.Climatology)]
    [InlineData("2026-05-03", "2026-01-25", "2026-05-03", Basis.Climatology)]
    [InlineData("2026-05-04", "2027-01-25", "2027-06-14", Basis.Missing)] // next year's event is not known yet
    [InlineData("2026-01-01", "2026-01-25", "2026-05-03", Basis.Climatology)]
    public void Occurrence_IsTheOneAroundTheDayOrTheNext(string day, string from, string to, Basis basis)
    {
        var signals = Year2026(new SeasonEvent(SeasonEventKind.LeafOut, new(2026, 5, 4), Basis.Climatology, 30));

        Assert.Equal(
            new RangeOccurrence(Dates(from).Single(), Dates(to).Single(), basis),
            CalendarDays.Occurrence(Dormant, signals, Dates(day).Single()));
    }

    [Fact]
    public void Occurrence_SkipsYearsWithoutAFifthWeekday()
    {
        var fifth = new NthWeekday(5, IsoDayOfWeek.Thursday, 2);

        var occurrence = CalendarDays.Occurrence(new(fifth, fifth), Year2026(), new(2026, 1, 1));

        Assert.Equal(new LocalDate(2052, 2, 29), occurrence.From);
    }

    [Fact]
    public void Occurrence_ContainsExactlyTheDaysThatHold() =>
        Gen.Select(Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[0, 364]).Sample(
            (fromMonth, fromDay, toMonth, toDay, day) =>
            {
                var range = new CalendarRange(new FixedDate(fromMonth, fromDay), new FixedDate(toMonth, toDay));
                var (signals, date) = (Year2026(), new LocalDate(2026, 1, 1).PlusDays(day));
                var occurrence = CalendarDays.Occurrence(range, signals, date);
                var contains = occurrence.From <= date && date <= occurrence.To;
                return contains == CalendarDays.Days(range, signals).Holds[day];
            });

    private static SignalSet Year2026(params SeasonEvent[] events) =>
        SignalSet.Of("anywhere", DaySpan.Between(new(2026, 1, 1), new(2026, 12, 31)), [], events);

    private static string Runs(DayBits days, DaySpan? span = null)
    {
        var axis = span ?? Year2026().Span;
        return string.Join(' ', days.Runs().Select(run => $"{axis[run.First]:R}/{axis[run.Last]:R}"));
    }

    private static IEnumerable<LocalDate> Dates(string text) =>
        text.Split(' ').Select(date => LocalDatePattern.Iso.Parse(date).Value);
}
