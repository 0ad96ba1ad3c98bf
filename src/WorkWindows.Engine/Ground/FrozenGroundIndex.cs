namespace WorkWindows.Engine.Ground;

/// <summary>
/// The continuous frozen ground index (Molnau and Bissell 1983): cold adds to it, warmth takes away, snow shields from
/// both, and a share of it fades each day. Source: docs/rules/frozen-ground.md.
/// </summary>
/// <remarks>
/// The limits come from the Pacific Northwest of the United States; how well they fit elsewhere is not known. They are
/// a hint to look, never leave to drive on the ground.
/// </remarks>
public static class FrozenGroundIndex
{
    /// <summary>What is left of the index on the day after.</summary>
    public const double KeptPerDay = 0.97;

    // How much a centimetre of snow shields, 1/cm: wet snow of thaws more than dry snow.
    private const double FrostShieldPerCm = 0.08;
    private const double ThawShieldPerCm = 0.5;
    private const double SnowEffect = 0.4;

    /// <summary>The index of each day.</summary>
    /// <param name="meanC">Daily mean temperatures, °C, in order.</param>
    /// <param name="snowDepthCm">Snow on the ground on the same days, cm.</param>
    /// <param name="indexC">
    /// Takes the index, °C-days. From the first day without a temperature or a needed snow depth on it is NaN for good:
    /// how far the ground thawed or froze on that day is not known, and later weather does not tell. Start anew where
    /// the ground has been seen, or after a summer.
    /// </param>
    /// <param name="startC">The index of the day before the first; 0 is thawed ground.</param>
    /// <exception cref="ArgumentException">The three differ in length, or a depth or the start is negative.</exception>
    public static void Over(
        ReadOnlySpan<double> meanC, ReadOnlySpan<double> snowDepthCm, Span<double> indexC, double startC = 0)
    {
        if (meanC.Length != snowDepthCm.Length || meanC.Length != indexC.Length)
        {
            throw new ArgumentException(
                $"{meanC.Length} means, {snowDepthCm.Length} depths and room for {indexC.Length}.", nameof(indexC));
        }
        // Not ThrowIfNegative, to which NaN is negative.
        if (startC < 0)
            throw new ArgumentException($"The index starts at {startC}.", nameof(startC));
        var today = startC;
        for (var day = 0; day < meanC.Length; day++)
        {
            if (snowDepthCm[day] < 0)
                throw new ArgumentException($"A snow depth is {snowDepthCm[day]} cm.", nameof(snowDepthCm));
            if (today == 0 && meanC[day] >= 0)
            {
                // Nothing is there to thaw, whatever lies on it: a station that leaves out the snow of summer will do.
                indexC[day] = 0;
                continue;
            }
            var shieldPerCm = meanC[day] > 0 ? ThawShieldPerCm : FrostShieldPerCm;
            today = Math.Max(
                0, KeptPerDay * today - meanC[day] * Math.Exp(-SnowEffect * shieldPerCm * snowDepthCm[day]));
            indexC[day] = today;
        }
    }
}
