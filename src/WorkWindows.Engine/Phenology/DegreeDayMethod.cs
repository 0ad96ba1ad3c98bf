namespace WorkWindows.Engine.Phenology;

/// <summary>
/// How a day's heat is reckoned from its minimum and maximum. A requirement in degree-days is valid only with the
/// method that it was fitted with.
/// </summary>
public enum DegreeDayMethod
{
    /// <summary>The mean of minimum and maximum, held between the limits (method 1).</summary>
    SimpleAverage,

    /// <summary>The mean of a minimum and a maximum that were each held between the limits first (method 2).</summary>
    ClippedAverage,

    /// <summary>The area of a triangle that rises from the minimum and falls back to it.</summary>
    SingleTriangle,

    /// <summary>Half a triangle from the day's minimum and half a one to the next day's.</summary>
    DoubleTriangle,

    /// <summary>The area of a sine wave that rises from the minimum and falls back to it.</summary>
    SingleSine,

    /// <summary>Half a sine wave from the day's minimum and half a one to the next day's.</summary>
    DoubleSine,
}
