using WorkWindows.Engine.Wind;

namespace WorkWindows.Engine.Tests.Wind;

public sealed class BeaufortTests
{
    [Theory]
    // Scale with tree signs, National Weather Service, Tampa Bay (S).
    [InlineData(8, 3)]
    [InlineData(12, 3)]
    [InlineData(13, 4)]
    [InlineData(18, 4)]
    [InlineData(18.9, 4)]
    [InlineData(19, 5)]
    [InlineData(24, 5)]
    [InlineData(25, 6)]
    [InlineData(31, 6)]
    [InlineData(32, 7)]
    [InlineData(38, 7)]
    [InlineData(39, 8)]
    [InlineData(46, 8)]
    [InlineData(47, 9)]
    [InlineData(54, 9)]
    [InlineData(55, 10)]
    [InlineData(63, 10)]
    // From memory.
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(3, 1)]
    [InlineData(4, 2)]
    [InlineData(7, 2)]
    [InlineData(64, 11)]
    [InlineData(72, 11)]
    [InlineData(73, 12)]
    [InlineData(double.NaN, null)]
    public void ForceOf_ChangesAtEachEdge(double windMph, int? force) => Assert.Equal(force, Beaufort.ForceOf(windMph));

    [Fact]
    public void ForceOf_RefusesANegativeWind() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Beaufort.ForceOf(-1));
}
