namespace WorkWindows.Engine.Stands;

/// <summary>
/// Cover of crowns that overlap at random (USDA Forest Service, Forest Vegetation Simulator): C = 100 (1 − e^(−S/100)).
/// </summary>
public static class CanopyCover
{
    /// <param name="crownAreaPercent">The sum of crowns, percent of the ground; it may pass 100.</param>
    public static double OfCrownAreaPercent(double crownAreaPercent) => 100 * (1 - Math.Exp(-0.01 * crownAreaPercent));

    /// <summary>The sum of crowns that gives a cover.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The cover is not from 0 up to, and below, 100.</exception>
    public static double CrownAreaPercentFor(double coverPercent) => coverPercent is >= 0 and < 100
        ? -100 * Math.Log(1 - (coverPercent / 100))
        : throw new ArgumentOutOfRangeException(nameof(coverPercent), coverPercent, "Crowns never cover all.");
}
