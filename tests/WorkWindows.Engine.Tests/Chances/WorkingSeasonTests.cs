using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Tests.Chances;

public class WorkingSeasonTests
{
    // w is a workable day, - one that is not; three days without work end a season here.
    [Theory]
    [InlineData("------", null, null, 0)]
    [InlineData("ww----", 0, 1, 2)]
    [InlineData("ww---", 0, 1, 2)]
    [InlineData("ww--", 0, null, 2)]              // too few days to know that it has ended
    [InlineData("-w--w---", 1, 4, 2)]             // a break of two days is a pause
    [InlineData("-w---w", 1, 1, 1)]               // a break of three is the end
    [InlineData("wwwwww", 0, null, 6)]
    [InlineData("w", 0, null, 1)]
    public void Of_EndsAtTheFirstLongBreak(string days, int? first, int? last, int workable)
    {
        var season = WorkingSeason.Of(DayBits.Where(days.Length, day => days[day] == 'w'), longestBreakDays: 2);

        Assert.Equal(new(first, last, workable), season);
    }

    // u is an unknown day. What is the same whether the unknown days are all workable or none is known.
    [Theory]
    [InlineData("-ww----", true, true)]
    [InlineData("uww----", false, false)]    // it may have opened a day sooner
    [InlineData("-wuw---", true, true)]      // inside the season: neither end hangs on it
    [InlineData("-ww-u--", true, false)]     // it may go on
    [InlineData("-ww---u", true, true)]      // after the break: another season
    [InlineData("uuuuuuu", false, false)]
    [InlineData("-------", true, true)]      // it is known not to open
    [InlineData("---u---", false, false)]
    public void Of_KnowsWhatUnknownDaysCannotChange(string days, bool opening, bool closing)
    {
        var season = MemberSeason.Of(
            new(DayBits.Where(days.Length, day => days[day] == 'w'), DayBits.Where(
                days.Length, day => days[day] == 'u')),
            longestBreakDays: 2);

        Assert.Equal((opening, closing), (season.OpeningIsKnown, season.ClosingIsKnown));
    }
}
