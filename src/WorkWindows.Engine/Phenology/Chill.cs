namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Winter chill that buds need before they answer to heat, summed over hourly temperatures. Sources:
/// docs/rules/degree-days.md.
/// </summary>
/// <remarks>
/// Hours in order, in °C, without gaps; an hour without a value is NaN and makes the sum NaN, for a missing hour is not
/// one without chill. No hours have no chill.
/// </remarks>
public static class Chill
{
    /// <summary>Chilling hours: those from 0 to 7.2 °C, both included.</summary>
    public static double Hours(ReadOnlySpan<double> hourlyC)
    {
        var sum = 0.0;
        foreach (var airC in hourlyC)
            sum += double.IsNaN(airC) ? double.NaN : airC is >= 0 and <= 7.2 ? 1 : 0;
        return sum;
    }

    /// <summary>Chill units of the Utah model; warm hours take some away, so that the sum may be negative.</summary>
    public static double UtahUnits(ReadOnlySpan<double> hourlyC)
    {
        var sum = 0.0;
        foreach (var airC in hourlyC)
            sum += UtahUnitsOf(airC);
        return sum;
    }

    /// <summary>
    /// Chill portions of the Dynamic model: a product that warmth undoes until enough of it has gathered, and that is
    /// kept from then on.
    /// </summary>
    public static double DynamicPortions(ReadOnlySpan<double> hourlyC)
    {
        // Names of the model: rates and amounts of the two steps, and the slope and middle of the step that fixes them.
        const double E0 = 4153.5, E1 = 12888.8, A0 = 139500, A1 = 2.567e18, Slope = 1.6, MiddleK = 277;
        var (portions, gathered, lastFixedShare) = (0.0, 0.0, 0.0);
        for (var hour = 0; hour < hourlyC.Length; hour++)
        {
            var airK = hourlyC[hour] + 273;
            var step = Math.Exp(Slope * MiddleK * (airK - MiddleK) / airK);
            var fixedShare = step / (1 + step);
            if (hour > 0)
            {
                var level = A0 / A1 * Math.Exp((E1 - E0) / airK);
                var kept = gathered < 1 ? gathered : gathered * (1 - lastFixedShare);
                gathered = level - (level - kept) * Math.Exp(-A1 * Math.Exp(-E1 / airK));
                if (gathered >= 1)
                    portions += gathered * fixedShare;
            }
            if (double.IsNaN(airK))
                return double.NaN;
            lastFixedShare = fixedShare;
        }
        return portions;
    }

    private static double UtahUnitsOf(double airC) => airC switch
    {
        double.NaN => double.NaN,
        <= 1.4 => 0,
        <= 2.4 => 0.5,
        <= 9.1 => 1,
        <= 12.4 => 0.5,
        <= 15.9 => 0,
        <= 18 => -0.5,
        _ => -1,
    };
}
