using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

public sealed class WeatherPointTests
{
    [Theory]
    [InlineData(90.1, 0)]
    [InlineData(-91, 0)]
    [InlineData(double.NaN, 0)]
    [InlineData(0, 180.5)]
    [InlineData(0, double.NaN)]
    public void WeatherPoint_RefusesAPositionThatIsNotOnEarth(double latitudeDeg, double longitudeDeg) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeatherPoint("nowhere", latitudeDeg, longitudeDeg));
}
