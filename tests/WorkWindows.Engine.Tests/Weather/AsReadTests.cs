using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

/// <summary>Readings of United States stations as GHCN-Daily keeps them, and the limits that they meet.</summary>
public sealed class AsReadTests
{
    [Theory]
    [InlineData(DailyElement.MinTemperatureC, -6.7, 20, RuleUnit.DegF)]
    [InlineData(DailyElement.MinTemperatureC, -7.2, 19, RuleUnit.DegF)]
    [InlineData(DailyElement.MinTemperatureC, -17.8, 0, RuleUnit.DegF)]
    [InlineData(DailyElement.MaxTemperatureC, 37.8, 100, RuleUnit.DegF)]
    [InlineData(DailyElement.MaxTemperatureC, -40, -40, RuleUnit.DegF)]
    [InlineData(DailyElement.GustMps, 14.3, 32, RuleUnit.Mph)]           // WSF5 143 on 224 days of a shared record
    [InlineData(DailyElement.GustMps, 11.2, 25, RuleUnit.Mph)]
    [InlineData(DailyElement.WindMps, 8.5, 19, RuleUnit.Mph)]
    [InlineData(DailyElement.WindMps, 5.8, 13, RuleUnit.Mph)]
    [InlineData(DailyElement.PrecipitationMm, 7.6, 0.3, RuleUnit.WaterInches)]
    [InlineData(DailyElement.PrecipitationMm, 2.5, 0.1, RuleUnit.WaterInches)]
    [InlineData(DailyElement.PrecipitationMm, 25.4, 1, RuleUnit.WaterInches)]
    [InlineData(DailyElement.SnowDepthCm, 15.2, 6, RuleUnit.Inches)]
    [InlineData(DailyElement.SnowDepthCm, 30.5, 12, RuleUnit.Inches)]
    public void Restore_GivesWhatWasRead(DailyElement element, double kept, double read, RuleUnit unit) =>
        Assert.Equal(new Threshold(read, unit).InSignalUnit, AsRead.Restore(element, kept), 1e-9);

    [Fact]
    public void Restore_MeetsALimitOfTheSameDegrees_ForEveryTemperatureOnEarth()
    {
        for (var readF = -130; readF <= 140; readF++)
        {
            var tenthsC = Math.Round((readF - 32) * 50 / 9.0) / 10;
            Assert.Equal(
                new Threshold(readF, RuleUnit.DegF).InSignalUnit, AsRead.Restore(DailyElement.MinTemperatureC, tenthsC), 1e-9);
        }
    }

    [Fact]
    public void Restore_MeetsALimitOfTheSameSpeed_ForEveryWind()
    {
        for (var mph = 0; mph <= 250; mph++)
        {
            Assert.Equal(new Threshold(mph, RuleUnit.Mph).InSignalUnit,
                AsRead.Restore(DailyElement.GustMps, Math.Round(mph * 0.44704, 1)), 1e-9);
        }
    }

    [Fact]
    public void Restore_MeetsALimitOfTheSameAmount_ForEveryHundredthOfAnInch()
    {
        for (var hundredths = 0; hundredths <= 2000; hundredths++)
        {
            Assert.Equal(new Threshold(hundredths / 100.0, RuleUnit.WaterInches).InSignalUnit,
                AsRead.Restore(DailyElement.PrecipitationMm, Math.Round(hundredths * 0.254, 1)), 1e-9);
        }
    }

    [Theory]
    [InlineData(DailyElement.MinTemperatureC, -6.8)]
    [InlineData(DailyElement.MinTemperatureC, -6.6)]
    [InlineData(DailyElement.GustMps, 14.5)]
    [InlineData(DailyElement.MinHumidityPercent, 33)]
    public void Restore_LeavesATenthThatNothingReadRoundsTo(DailyElement element, double kept) =>
        Assert.Equal(kept, AsRead.Restore(element, kept));
}
