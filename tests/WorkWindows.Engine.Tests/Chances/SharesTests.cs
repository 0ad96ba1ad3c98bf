using CsCheck;
using WorkWindows.Engine.Chances;

namespace WorkWindows.Engine.Tests.Chances;

public class SharesTests
{
    // A day without others around it keeps its share.
    [Theory]
    [InlineData(21, 0, 30, 0.7)]
    [InlineData(0, 0, 30, 0.0)]
    [InlineData(30, 0, 30, 1.0)]
    [InlineData(18, 3, 30, 18 / 27.0)]    // three years of thirty without a value: the others tell
    [InlineData(18, 4, 30, null)]         // four are more than a tenth
    [InlineData(0, 30, 30, null)]         // nobody measured wind: nothing is told, least of all 0 %
    [InlineData(0, 0, 0, null)]
    public void Of_IsTheShareOfTheYearsThatKnow_UnlessTooManyDoNot(
        int workable, int unknown, int members, double? expected)
    {
        var share = Shares.Of([workable], [unknown], members)[0];

        Assert.Equal(expected is null, share is null);
        Assert.Equal(expected ?? 0, share ?? 0, 1e-12);
    }

    // (15 + 6 x (0.5 + 0.9) / 2) / 36 and (27 + 6 x 0.7) / 36
    [Fact]
    public void Of_DrawsADayThatDividesTheYearsTowardsTheDaysAround() =>
        Assert.Equal(
            [0, 0.5333, 0.8667, 1],
            Shares.Of([0, 15, 27, 30], [0, 0, 0, 0], 30).Select(share => Math.Round(share!.Value, 4)));

    [Fact]
    public void Of_LooksNoFurtherThanFifteenDays()
    {
        var workable = new int[40];
        (workable[0], workable[15], workable[16]) = (15, 27, 30);

        Assert.Equal(19.2 / 36, Shares.Of(workable, new int[40], 30)[0]!.Value, 1e-9);
        (workable[15], workable[16]) = (30, 27);
        Assert.Equal(0.5, Shares.Of(workable, new int[40], 30)[0]!.Value, 1e-9);
    }

    [Fact]
    public void Of_StaysBetweenTheSharesAround() =>
        Gen.Int[0, 30].Array[1, 60].Sample(workable =>
        {
            var shares = Shares.Of(workable, new int[workable.Length], 30);
            return shares.All(share => share >= workable.Min() / 30.0 - 1e-9 && share <= workable.Max() / 30.0 + 1e-9);
        });
}
