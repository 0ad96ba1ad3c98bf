namespace WorkWindows.Engine.Weather.Quality;

/// <summary>Tells from the values whether temperatures were read in whole °F, whatever unit they are kept in.</summary>
public static class WholeDegrees
{
    /// <summary>Fewer values say too little.</summary>
    public const int MinValues = 100;

    /// <summary>
    /// The share of the values that must be whole °F, 0 to 1. Since 2010 up to one in five of an airport's come from
    /// instruments that give tenths of a °C; of a record in °C one in five and a half is a whole °F by chance.
    /// </summary>
    public const double MinShare = 0.5;

    private const double ExactC = 1e-6;

    /// <summary>Whether minima and maxima were read in whole °F.</summary>
    /// <returns>Null when there are too few of them to tell.</returns>
    public static bool? AreFahrenheit(IEnumerable<DailyReading> readings)
    {
        var (whole, all) = (0, 0);
        foreach (var reading in readings)
        {
            if (reading.QualityFlag is not null
                || reading.Element is not (DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC))
            {
                continue;
            }
            all++;
            if (IsWholeFahrenheit(reading.Value))
                whole++;
        }
        return all < MinValues ? null : whole >= MinShare * all;
    }

    /// <summary>A value kept in tenths of °C, or unrounded, that a whole °F stands behind.</summary>
    private static bool IsWholeFahrenheit(double degC)
    {
        var nearest = (Math.Round(degC * 1.8 + 32) - 32) / 1.8;
        return Math.Abs(nearest - degC) < ExactC || Math.Abs(Math.Round(nearest, 1) - degC) < ExactC;
    }
}
