namespace WorkWindows.Engine.Weather.Quality;

/// <summary>What a value of an element can be at all. Source: docs/rules/weather-quality.md.</summary>
internal static class ValueBounds
{
    /// <summary>The lowest and the highest value of an element, both possible, in its unit.</summary>
    /// <remarks>
    /// The records of the World Meteorological Organization's archive of extremes, from memory: Vostok 1983 and Furnace
    /// Creek 1913 for temperature, Barrow Island 1996 for gusts, which no sustained wind exceeds, Foc-Foc 1966 for a
    /// day's rain; Mount Ibuki 1927 for snow on the ground.
    /// </remarks>
    public static (double Lowest, double Highest) Of(DailyElement element) => element switch
    {
        DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC => (-89.2, 56.7),
        DailyElement.WindMps or DailyElement.GustMps => (0, 113.2),
        DailyElement.PrecipitationMm => (0, 1825),
        DailyElement.SnowDepthCm => (0, 1182),
        DailyElement.MinHumidityPercent or DailyElement.ThunderChancePercent => (0, 100),
    };

    public static void Check(CheckedColumn column)
    {
        var (lowest, highest) = Of(column.Element);
        for (var day = 0; day < column.Values.Length; day++)
        {
            if (column.Values[day] < lowest || column.Values[day] > highest)
                column.Reject(day, RejectionReason.Impossible);
        }
    }
}
