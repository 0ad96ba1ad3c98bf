namespace WorkWindows.Engine.Chances;

/// <summary>
/// How far a temperature of the present lies from that of a past year on the same calendar day. The past year takes
/// over without a jump: the difference is added to it, and fades from day to day.
/// </summary>
/// <param name="DifferenceC">On the last day that is known, °C.</param>
/// <param name="KeptPerDay">The share that is left on the next day, 0 to 1.</param>
internal readonly record struct Departure(double DifferenceC, double KeptPerDay)
{
    public static Departure None { get; }

    /// <param name="nowC">The last known value, °C.</param>
    /// <param name="thenC">The past year's on that day, °C; NaN for none.</param>
    /// <param name="keptPerDay">The share of a departure from what is usual that is left on the next day.</param>
    public static Departure Of(double nowC, double thenC, double keptPerDay) =>
        double.IsNaN(nowC - thenC) ? None : new(nowC - thenC, keptPerDay);
}
