using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

public sealed class WholeFahrenheitTests
{
    [Theory]
    [InlineData(-6.7, 20)]
    [InlineData(-7.2, 19)]
    [InlineData(-17.8, 0)]
    [InlineData(0, 32)]
    [InlineData(37.8, 100)]
    [InlineData(-40, -40)]
    public void Restore_GivesTheDegreesThatWereRead(double tenthsC, double readF) =>
        Assert.Equal(new Threshold(readF, RuleUnit.DegF).InSignalUnit, WholeFahrenheit.Restore(tenthsC));

    [Fact]
    public void Restore_MeetsALimitOfTheSameDegrees_ForEveryTemperatureOnEarth()
    {
        for (var readF = -130; readF <= 140; readF++)
        {
            var tenthsC = Math.Round((readF - 32) * 50 / 9.0) / 10;
            Assert.Equal(new Threshold(readF, RuleUnit.DegF).InSignalUnit, WholeFahrenheit.Restore(tenthsC));
        }
    }

    [Theory]
    [InlineData(-6.8)]
    [InlineData(-6.6)]
    [InlineData(0.1)]
    public void Restore_LeavesATenthThatNoWholeDegreeRoundsTo(double tenthsC) =>
        Assert.Equal(tenthsC, WholeFahrenheit.Restore(tenthsC));
}
