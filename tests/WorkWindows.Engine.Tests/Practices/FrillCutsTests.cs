using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Tests.Practices;

public sealed class FrillCutsTests
{
    [Theory]
    // One an inch and two at least, Penn State (S); counts computed (C).
    [InlineData(0.5, 2)]
    [InlineData(1, 2)]
    [InlineData(2, 2)]
    [InlineData(5, 5)]
    [InlineData(5.4, 6)]
    public void CountFor_IsOneForEachInchBegun_AndTwoAtLeast(double dbhIn, int cuts) =>
        Assert.Equal(cuts, FrillCuts.CountFor(dbhIn));

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void CountFor_RefusesWhatIsNoDiameter(double dbhIn) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FrillCuts.CountFor(dbhIn));
}
