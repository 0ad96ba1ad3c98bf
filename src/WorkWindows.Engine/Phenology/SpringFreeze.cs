using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Phenology;

/// <summary>Freezes that reach new leaves and flowers. Source: docs/rules/spring-index.md.</summary>
public static class SpringFreeze
{
    /// <summary>A minimum at or below this harms new leaves, °F; readings of whole °F are meant.</summary>
    public const double HardFreezeF = 28;

    /// <summary>The days after first leaf on which a freeze does not yet count as a false spring.</summary>
    public const int SparedDays = 7;

    /// <summary>Damage index: days from first leaf to the last freeze, 0 when no freeze comes later.</summary>
    /// <param name="minF">Daily minima in °F from 1 January to midsummer.</param>
    /// <param name="leafDay">The day of the year of first leaf.</param>
    /// <returns>Null when a day after the last freeze that was read has no value: it may have frozen.</returns>
    public static int? DamageIndexDays(ReadOnlySpan<double> minF, int leafDay)
    {
        for (var day = minF.Length; day > leafDay; day--)
        {
            if (double.IsNaN(minF[day - 1]))
                return null;
            if (minF[day - 1] <= HardFreezeF)
                return day - leafDay;
        }
        return 0;
    }

    /// <summary>Whether it freezes from seven days after first leaf to first bloom, both included.</summary>
    /// <param name="minF">Daily minima in °F from 1 January on.</param>
    /// <param name="leafDay">The day of the year of first leaf.</param>
    /// <param name="bloomDay">The day of the year of first bloom.</param>
    public static Truth IsEarlyFalseSpring(ReadOnlySpan<double> minF, int leafDay, int bloomDay) =>
        Freezes(minF, leafDay + SparedDays, bloomDay);

    /// <summary>Whether it freezes after the day of first bloom.</summary>
    /// <param name="minF">Daily minima in °F from 1 January to midsummer.</param>
    /// <param name="bloomDay">The day of the year of first bloom.</param>
    public static Truth IsLateFalseSpring(ReadOnlySpan<double> minF, int bloomDay) =>
        Freezes(minF, bloomDay + 1, minF.Length);

    private static Truth Freezes(ReadOnlySpan<double> minF, int firstDay, int lastDay)
    {
        var isKnown = lastDay <= minF.Length;
        for (var day = firstDay; day <= Math.Min(lastDay, minF.Length); day++)
        {
            if (minF[day - 1] <= HardFreezeF)
                return Truth.Holds;
            isKnown &= !double.IsNaN(minF[day - 1]);
        }
        return isKnown ? Truth.Fails : Truth.Unknown;
    }
}
