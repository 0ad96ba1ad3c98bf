using WorkWindows.Engine.Chances.Verification;

namespace WorkWindows.Engine.Tests.Chances.Verification;

public class ScoresTests
{
    // Single forecasts of rain: Brier 1950, Mon. Weather Rev. 78:1, the definition for two classes, halved as is usual
    // today; the numbers are squares anybody can check.
    [Theory]
    [InlineData(1.0, true, 0)]
    [InlineData(0.7, true, 0.09)]
    [InlineData(0.3, true, 0.49)]
    [InlineData(0.5, true, 0.25)]
    [InlineData(0.5, false, 0.25)]
    [InlineData(0.7, false, 0.49)]
    [InlineData(1.0, false, 1)]
    public void Brier_IsTheSquaredError(double chance, bool workable, double expected)
    {
        var tally = new BacktestTally(leadDays: 2);
        tally.Add(2, chance, climatology: 0.5, smoothed: 0.6, workable);

        var result = tally.Result([]);

        Assert.Equal(expected, result.ByLead[1].Brier, 1e-12);
        Assert.Equal(0.25, result.ByLead[1].BrierOfClimatology, 1e-12);
        Assert.Equal(1 - expected / 0.25, result.ByLead[1].Skill, 1e-12);
        Assert.Equal(1 - expected / (workable ? 0.16 : 0.36), result.ByLead[1].SkillOverSmoothed, 1e-9);
        Assert.Equal(0, result.ByLead[0].Days);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.04, 0)]
    [InlineData(0.05, 1)]
    [InlineData(0.65, 7)]
    [InlineData(0.7, 7)]
    [InlineData(0.74, 7)]
    [InlineData(0.95, 10)]
    [InlineData(1, 10)]
    public void ReliabilityBin_IsTheNearestTenth(double chance, int bin) =>
        Assert.Equal(bin, ReliabilityBin.Of(chance));
}
