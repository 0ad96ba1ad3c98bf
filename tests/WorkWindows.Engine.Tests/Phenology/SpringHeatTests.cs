using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>Figures computed from the published steps (C).</summary>
public sealed class SpringHeatTests
{
    [Theory]
    [InlineData(39.735, 9.4130, 11.1433, 11.1568, 14.9156)]
    [InlineData(42.7, 9.1867, 11.1304, 11.1455, 15.3679)]
    [InlineData(46.5, 8.7380, 10.9664, 10.9837, 15.8246)]
    public void DayLengthHours_MatchesComputedValues(
        double latitudeDeg, double day1, double day60, double day61, double day172)
    {
        Assert.Equal(day1, SpringHeat.DayLengthHours(1, latitudeDeg), 0.000051);
        Assert.Equal(day60, SpringHeat.DayLengthHours(60, latitudeDeg), 0.000051);
        Assert.Equal(day61, SpringHeat.DayLengthHours(61, latitudeDeg), 0.000051);
        Assert.Equal(day172, SpringHeat.DayLengthHours(172, latitudeDeg), 0.000051);
    }

    [Theory]
    [InlineData(80, 1, 1)]
    [InlineData(80, 172, 23)]
    public void DayLengthHours_LeavesAnHourOfDayAndOfNight(double latitudeDeg, int dayOfYear, double hours) =>
        Assert.Equal(hours, SpringHeat.DayLengthHours(dayOfYear, latitudeDeg));

    [Theory]
    [InlineData(60, 40, 12.0, 452.3506)]
    [InlineData(60, 40, 12.9, 447.4237)]
    [InlineData(50, 20, 10.5, 142.1432)]
    [InlineData(32, 10, 9.3, 1.6661)]
    [InlineData(75, 55, 14.2, 827.9131)]
    [InlineData(45, 0, 11.5, 75.6033)]
    public void DegreeHoursF_MatchesComputedValues(double maxF, double minF, double dayLengthHours, double heatF) =>
        Assert.Equal(heatF, SpringHeat.DegreeHoursF(maxF, minF, dayLengthHours), 0.000051);

    [Theory]
    [InlineData(double.NaN, 40)]
    [InlineData(60, double.NaN)]
    public void DegreeHoursF_HasNoValue_WhenATemperatureIsMissing(double maxF, double minF) =>
        Assert.Equal(double.NaN, SpringHeat.DegreeHoursF(maxF, minF, 12));

    [Fact]
    public void DegreeHoursF_IsNothing_WhenItNeverThaws() => Assert.Equal(0, SpringHeat.DegreeHoursF(-5, -30, 9));
}
