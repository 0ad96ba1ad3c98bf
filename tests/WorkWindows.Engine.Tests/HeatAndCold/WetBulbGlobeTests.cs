using WorkWindows.Engine.HeatAndCold;

namespace WorkWindows.Engine.Tests.HeatAndCold;

/// <summary>Formulas from memory, figures computed from them (C).</summary>
public sealed class WetBulbGlobeTests
{
    [Theory]
    [InlineData(20, 50, 19.86)]
    [InlineData(25, 60, 25.56)]
    [InlineData(30, 50, 29.26)]
    [InlineData(30, 70, 32.58)]
    [InlineData(35, 40, 32.59)]
    public void ApproximateC_MatchesComputedValues(double airC, double humidity, double wetBulbGlobeC) =>
        Assert.Equal(wetBulbGlobeC, WetBulbGlobe.ApproximateC(airC, humidity), 0.0051);

    [Theory]
    [InlineData(180, 28.10, 30.76)]
    [InlineData(300, 24.97, 28.21)]
    [InlineData(415, 22.99, 26.59)]
    [InlineData(520, 21.60, 25.47)]
    public void Limits_MatchComputedValues(double metabolicW, double alertC, double exposureC)
    {
        Assert.Equal(alertC, WetBulbGlobe.AlertLimitC(metabolicW), 0.0051);
        Assert.Equal(exposureC, WetBulbGlobe.ExposureLimitC(metabolicW), 0.0051);
    }

    [Fact]
    public void ApproximateC_HasNoValue_WhenOneIsMissing()
    {
        Assert.Equal(double.NaN, WetBulbGlobe.ApproximateC(double.NaN, 50));
        Assert.Equal(double.NaN, WetBulbGlobe.ApproximateC(30, double.NaN));
    }
}
