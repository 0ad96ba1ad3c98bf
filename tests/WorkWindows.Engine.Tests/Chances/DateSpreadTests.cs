using NodaTime;
using WorkWindows.Engine.Chances;

namespace WorkWindows.Engine.Tests.Chances;

public class DateSpreadTests
{
    private static readonly LocalDate NewYear = new(2026, 1, 1);

    // The thirty-value row of type 8 of Hyndman and Fan 1996 (as in QuantileTests): 3.3667 and 27.6333, and 15.5, which
    // rounds to the even day.
    [Fact]
    public void Of_GivesQuantilesOfType8InWholeDays()
    {
        var spread = DateSpread.Of(
            Enumerable.Range(1, 30).Reverse().Select(day => (LocalDate?)NewYear.PlusDays(day - 1)));

        Assert.Equal(new(30, 0, 30, new(2026, 1, 3), new(2026, 1, 15), new(2026, 1, 28)), spread);
    }

    [Fact]
    public void Of_CountsTheYearsInWhichItDoesNotHappen_AndKeepsThemOutOfTheDates()
    {
        var spread = DateSpread.Of([NewYear, null, NewYear, null, NewYear]);

        Assert.Equal(new(3, 0, 5, NewYear, NewYear, NewYear), spread);
    }

    [Fact]
    public void Of_HasNoDate_WhenItNeverHappens() =>
        Assert.Equal(new(0, 0, 2, null, null, null), DateSpread.Of([null, null]));

    [Theory]
    [InlineData(27, 3, true)]     // a tenth
    [InlineData(26, 4, false)]
    public void Of_TellsNoDate_WhenMoreThanATenthDoesNotKnow(int known, int unknown, bool isTold)
    {
        var spread = DateSpread.Of(Enumerable.Repeat((LocalDate?)NewYear, known), unknown);

        Assert.Equal((known, unknown, 30, isTold), (spread.Happens, spread.Unknown, spread.Members, spread.IsTold));
        Assert.Equal(isTold ? NewYear : null, spread.P50);
    }
}
