using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Daily;

/// <summary>
/// What a reading can be at most: a little beyond the world records (−89.2 °C, 56.7 °C, 113.2 m/s, 1825 mm of rain in a
/// day, 11.8 m of snow), so that what lies outside is in another unit and not weather.
/// </summary>
internal static class ReadingBounds
{
    public static (double Lowest, double Highest) Of(DailyElement element) => element switch
    {
        DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC => (-90, 60),
        DailyElement.WindMps or DailyElement.GustMps => (0, 120),
        DailyElement.PrecipitationMm => (0, 2000),
        DailyElement.SnowDepthCm => (0, 1200),
        DailyElement.MinHumidityPercent or DailyElement.ThunderChancePercent => (0, 100),
    };

    public static bool Hold(DailyElement element, double reading)
    {
        var (lowest, highest) = Of(element);
        return reading >= lowest && reading <= highest;
    }
}
